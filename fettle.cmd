@echo off
rem Starts fettle from this folder on Windows; builds it with Maven when it has not been built yet or
rem when its sources have changed. Standard output belongs to the program alone: everything said here
rem goes to standard error, and what Maven says goes to target\build.log.
setlocal EnableExtensions DisableDelayedExpansion
set "FETTLE_HOME=%~dp0"
if "%FETTLE_HOME:~-1%"=="\" set "FETTLE_HOME=%FETTLE_HOME:~0,-1%"
set "FETTLE_TARGET=%FETTLE_HOME%\target"
set "FETTLE_JAR=%FETTLE_TARGET%\fettle.jar"
set "FETTLE_STAMP=%FETTLE_TARGET%\launcher.stamp"
set "FETTLE_LOCK=%FETTLE_TARGET%\launcher.lock"
set "FETTLE_LOG=%FETTLE_TARGET%\build.log"
set "FETTLE_ARCHIVE=%FETTLE_TARGET%\fettle-windows.jsa"

rem --- Java -----------------------------------------------------------------------------------------
set "FETTLE_JAVA=java.exe"
if not defined JAVA_HOME goto java_on_path
set "FETTLE_JAVA=%JAVA_HOME:"=%\bin\java.exe"
if exist "%FETTLE_JAVA%" goto java_found
>&2 echo fettle: JAVA_HOME is "%JAVA_HOME%", and there is no bin\java.exe in it.
>&2 echo fettle: Set JAVA_HOME to the folder of a JDK 17 or newer, or remove it.
exit /b 3

:java_on_path
where java.exe >nul 2>&1
if not errorlevel 1 goto java_found
>&2 echo fettle: Java was not found.
>&2 echo fettle: Install a JDK 17 or newer and put it on the PATH, or set JAVA_HOME.
exit /b 3

:java_found
set "FETTLE_TRIES=0"

rem --- Build, when needed ---------------------------------------------------------------------------
:check
call :needs_build
if not errorlevel 1 goto run
if not exist "%FETTLE_TARGET%" mkdir "%FETTLE_TARGET%" 2>nul
mkdir "%FETTLE_LOCK%" 2>nul
if not errorlevel 1 goto locked
if not exist "%FETTLE_LOCK%" goto cannot_write
if %FETTLE_TRIES%==0 >&2 echo Another fettle is building; waiting for it ...
set /a FETTLE_TRIES+=1
rem Ten minutes: whoever held the lock has been ended without giving it back.
if %FETTLE_TRIES% GEQ 600 goto take_over
ping -n 2 127.0.0.1 >nul
goto check

:take_over
rmdir /s /q "%FETTLE_LOCK%" 2>nul
set "FETTLE_TRIES=1"
goto check

:cannot_write
>&2 echo fettle: "%FETTLE_TARGET%" cannot be written to.
exit /b 3

:locked
rem The one that held the lock before may have built meanwhile.
call :needs_build
if not errorlevel 1 goto unlock_and_run
call :build
if errorlevel 1 goto build_failed
call :train
:unlock_and_run
rmdir /s /q "%FETTLE_LOCK%" 2>nul
goto run

:build_failed
rmdir /s /q "%FETTLE_LOCK%" 2>nul
exit /b 3

rem --- Flags by command: short work wants a quick start, long numeric work the full compiler ----------
:run
set "FETTLE_FLAGS=-XX:TieredStopAtLevel=1 -XX:+UseSerialGC"
set "FETTLE_HEADLESS=-Djava.awt.headless=true"
for %%c in (demo apply recompute audit self-check) do if /i "%~1"=="%%c" set "FETTLE_FLAGS=-XX:+UseParallelGC"
if /i "%~1"=="desk" set "FETTLE_FLAGS=-XX:+UseParallelGC"
if /i "%~1"=="desk" set "FETTLE_HEADLESS="
if /i not "%~1"=="fit" goto flags_chosen
for %%a in (%*) do if /i "%%~a"=="--monte-carlo" set "FETTLE_FLAGS=-XX:+UseParallelGC"
:flags_chosen
set "FETTLE_SHARE="
if exist "%FETTLE_ARCHIVE%" set FETTLE_SHARE="-XX:SharedArchiveFile=%FETTLE_ARCHIVE%"

rem The program writes UTF-8; the console is told so while it runs, and told back afterwards.
set "FETTLE_CODEPAGE="
for /f "tokens=2 delims=:." %%p in ('chcp') do set "FETTLE_CODEPAGE=%%p"
chcp 65001 >nul 2>&1
"%FETTLE_JAVA%" %FETTLE_FLAGS% %FETTLE_SHARE% -Xlog:disable -Xlog:all=error:stderr "-Xlog:cds*=off:stderr" -XX:-UsePerfData -Dfile.encoding=UTF-8 -Dstdout.encoding=UTF-8 -Dstderr.encoding=UTF-8 %FETTLE_HEADLESS% -cp "%FETTLE_JAR%" fettle.cli.Main %*
set "FETTLE_STATUS=%ERRORLEVEL%"
if defined FETTLE_CODEPAGE chcp %FETTLE_CODEPAGE% >nul 2>&1
exit /b %FETTLE_STATUS%

rem --- Subroutines ----------------------------------------------------------------------------------

rem Exit status 1 when a build is needed. Dates are compared by PowerShell, which every Windows has;
rem where it may not run, what has been built is taken as it is.
:needs_build
if not exist "%FETTLE_JAR%" exit /b 1
if not exist "%FETTLE_TARGET%\lib" exit /b 1
if not exist "%FETTLE_HOME%\src\main" exit /b 0
if not exist "%FETTLE_STAMP%" exit /b 1
powershell -NoLogo -NoProfile -NonInteractive -ExecutionPolicy Bypass -Command "$h=$env:FETTLE_HOME; $t=(Get-Item -LiteralPath $env:FETTLE_STAMP).LastWriteTimeUtc; $n=@(Get-Item -LiteralPath (Join-Path $h 'pom.xml'))+@(Get-ChildItem -LiteralPath (Join-Path $h 'src\main'),(Join-Path $h '.mvn') -Recurse) | Where-Object {$_.LastWriteTimeUtc -gt $t -and $_.LastWriteTimeUtc -lt (Get-Date).ToUniversalTime()} | Select-Object -First 1; if ($n) {exit 10}; exit 0" <nul >nul 2>&1
if %ERRORLEVEL%==10 exit /b 1
exit /b 0

:build
where mvn >nul 2>&1
if errorlevel 1 goto no_maven
"%FETTLE_JAVA%" -version <nul 2>"%FETTLE_TARGET%\java-version.txt"
set "FETTLE_VERSION="
set "FETTLE_MAJOR=0"
for /f "tokens=3" %%v in ('findstr /c:" version " "%FETTLE_TARGET%\java-version.txt"') do if not defined FETTLE_VERSION set "FETTLE_VERSION=%%~v"
for /f "tokens=1 delims=.-+_" %%m in ("%FETTLE_VERSION%") do set "FETTLE_MAJOR=%%m"
if %FETTLE_MAJOR% LSS 17 goto old_java
if exist "%FETTLE_STAMP%" (>&2 echo Building fettle, its sources have changed ...) else (>&2 echo Building fettle, first use, about a minute ...)
type nul >"%FETTLE_STAMP%.new"
pushd "%FETTLE_HOME%"
call mvn -B -ntp -Dmaven.test.skip=true -Dspotless.check.skip=true package <nul >"%FETTLE_LOG%" 2>&1
set "FETTLE_BUILT=%ERRORLEVEL%"
popd
if not exist "%FETTLE_JAR%" set "FETTLE_BUILT=1"
if not "%FETTLE_BUILT%"=="0" goto show_log
rem Moving keeps the date: the stamp is as old as the beginning of this build.
move /y "%FETTLE_STAMP%.new" "%FETTLE_STAMP%" >nul
exit /b 0

:show_log
del /q "%FETTLE_STAMP%.new" 2>nul
powershell -NoLogo -NoProfile -NonInteractive -ExecutionPolicy Bypass -Command "Get-Content -LiteralPath $env:FETTLE_LOG -Tail 20" <nul 1>&2
>&2 echo fettle: the build failed; its last lines stand above, all of it in "%FETTLE_LOG%".
>&2 echo fettle: The first build downloads libraries: if they were not found, is this machine on the network?
>&2 echo fettle: Then try again; what is already there is kept.
exit /b 1

:no_maven
>&2 echo fettle: Maven was not found, and fettle has to be built.
>&2 echo fettle: Install Maven 3.8 or newer and put mvn on the PATH.
exit /b 1

:old_java
>&2 echo fettle: Java "%FETTLE_VERSION%" was found; fettle needs 17 or newer.
>&2 echo fettle: Install a JDK 17 or newer and put it on the PATH, or set JAVA_HOME.
exit /b 1

rem An archive of loaded classes shortens the start. Without one, fettle starts more slowly.
:train
if not exist "%FETTLE_TARGET%\training" mkdir "%FETTLE_TARGET%\training"
>"%FETTLE_TARGET%\training\pairs.csv" (
  echo response,hardness
  echo 812,148.5
  echo 704,203
  echo 617,262
  echo 535,341
  echo 461,442
)
del /f /q "%FETTLE_ARCHIVE%" 2>nul
pushd "%FETTLE_TARGET%\training"
"%FETTLE_JAVA%" -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Xlog:disable -XX:-UsePerfData -Dfile.encoding=UTF-8 "-XX:ArchiveClassesAtExit=%FETTLE_ARCHIVE%" -cp "%FETTLE_JAR%" fettle.cli.Main fit --pairs pairs.csv --model polynomial-2 --json <nul >nul 2>&1
popd
exit /b 0
