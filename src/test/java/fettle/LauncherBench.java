package fettle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import javax.tools.ToolProvider;

/**
 * A checkout in miniature: the real launcher, a stand-in for Maven that counts its runs and copies
 * a jar, and in that jar a stand-in for the program that prints what it was given.
 */
final class LauncherBench {
  private static final String PROGRAM =
      """
      package fettle.cli;
      public final class Main {
        public static void main(String[] args) throws Exception {
          for (String arg : args) System.out.println("arg=" + arg);
          System.out.println("cwd=" + java.nio.file.Path.of("").toRealPath());
          System.out.println("in=" + new String(System.in.readAllBytes()).strip());
          java.lang.management.ManagementFactory.getRuntimeMXBean().getInputArguments()
              .forEach(flag -> System.out.println("flag=" + flag));
          System.exit(args.length > 1 && args[0].equals("exit") ? Integer.parseInt(args[1]) : 0);
        }
      }
      """;

  private static final String MAVEN =
      """
      #!/usr/bin/env bash
      echo run >> "%1$s/builds"
      cat >/dev/null
      echo noise
      echo noise >&2
      sleep 0.2
      if [ -e "%1$s/fail" ]; then echo "could not find the library"; exit 1; fi
      mkdir -p target/lib
      cp "%1$s/program.jar" target/fettle.jar
      """;

  private final Path directory;
  private final Path javaHome;

  LauncherBench(Path directory) throws IOException {
    this(directory, Path.of(System.getProperty("java.home")));
    Files.createDirectories(home().resolve("src/main"));
    Files.createDirectories(home().resolve(".mvn"));
    Files.writeString(home().resolve("pom.xml"), "<project/>");
    Files.writeString(source(), "first");
    Files.copy(Path.of("fettle"), launcher(), StandardCopyOption.COPY_ATTRIBUTES);
    Path maven = Files.createDirectories(directory.resolve("bin")).resolve("mvn");
    Files.writeString(maven, MAVEN.formatted(directory));
    assertThat(maven.toFile().setExecutable(true)).isTrue();
    makeProgram();
  }

  private LauncherBench(Path directory, Path javaHome) {
    this.directory = directory;
    this.javaHome = javaHome;
  }

  private void makeProgram() throws IOException {
    Path file = Files.createDirectories(directory.resolve("program")).resolve("Main.java");
    Files.writeString(file, PROGRAM);
    int status =
        ToolProvider.getSystemJavaCompiler()
            .run(null, null, null, "-d", file.getParent().toString(), file.toString());
    assertThat(status).isZero();
    try (JarOutputStream jar =
        new JarOutputStream(Files.newOutputStream(directory.resolve("program.jar")))) {
      jar.putNextEntry(new JarEntry("fettle/cli/Main.class"));
      Files.copy(file.resolveSibling("fettle/cli/Main.class"), jar);
    }
  }

  LauncherBench withJavaHome(Path other) {
    return new LauncherBench(directory, other);
  }

  private Path home() {
    return directory.resolve("a checkout");
  }

  Path launcher() {
    return home().resolve("fettle");
  }

  Path source() {
    return home().resolve("src/main/Source.java");
  }

  Path target() {
    return home().resolve("target");
  }

  Path lock() {
    return target().resolve("launcher.lock");
  }

  int builds() throws IOException {
    Path builds = directory.resolve("builds");
    return Files.exists(builds) ? Files.readAllLines(builds).size() : 0;
  }

  void letBuildsFail(boolean fail) throws IOException {
    if (fail) {
      Files.createFile(directory.resolve("fail"));
    } else {
      Files.delete(directory.resolve("fail"));
    }
  }

  Outcome run(String... words) throws IOException, InterruptedException {
    return Outcome.of(start(words));
  }

  Outcome run(Path launcher, Path folder, String input, String... words)
      throws IOException, InterruptedException {
    Process process = start(launcher, folder, words);
    try (OutputStream stream = process.getOutputStream()) {
      stream.write(input.getBytes(StandardCharsets.UTF_8));
    }
    return Outcome.of(process);
  }

  Process start(String... words) throws IOException {
    Process process = start(launcher(), directory, words);
    process.getOutputStream().close();
    return process;
  }

  private Process start(Path launcher, Path folder, String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of(launcher.toString()));
    command.addAll(List.of(words));
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
    builder.environment().put("JAVA_HOME", javaHome.toString());
    builder.environment().merge("PATH", directory.resolve("bin") + ":", (old, bin) -> bin + old);
    builder.environment().keySet().removeAll(List.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS"));
    return builder.start();
  }

  /** What a process printed, line by line, and its exit status. */
  record Outcome(List<String> out, List<String> err, int status) {
    static Outcome of(Process process) throws IOException, InterruptedException {
      // The outputs are a few lines: neither pipe can fill while the other is read.
      List<String> out = lines(process.getInputStream().readAllBytes());
      List<String> err = lines(process.getErrorStream().readAllBytes());
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      return new Outcome(out, err, process.exitValue());
    }

    private static List<String> lines(byte[] bytes) {
      return new String(bytes, StandardCharsets.UTF_8).lines().toList();
    }
  }
}
