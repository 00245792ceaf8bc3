package fettle;

import static org.assertj.core.api.Assertions.assertThat;

import fettle.LauncherBench.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The launcher script, on a checkout whose Maven and whose program are stand-ins that tell. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the script under test needs bash")
class LauncherTest {
  @TempDir private Path directory;
  private LauncherBench bench;

  @BeforeEach
  void setUp() throws IOException {
    bench = new LauncherBench(directory);
  }

  @Test
  void givesTheProgramItsArgumentsFolderAndInputAndReturnsItsExitStatus() throws Exception {
    Path folder = Files.createDirectories(directory.resolve("my laboratory"));
    Path link = Files.createSymbolicLink(directory.resolve("linked"), bench.launcher());
    Outcome outcome = bench.run(link, folder, "two words\n", "exit", "7", "a b", "", "*", "c\"d'");
    assertThat(outcome.out())
        .containsSubsequence("arg=a b", "arg=", "arg=*", "arg=c\"d'")
        .contains("cwd=" + folder.toRealPath(), "in=two words");
    assertThat(outcome.out()).allMatch(line -> line.matches("(arg|cwd|in|flag)=.*"));
    assertThat(outcome.err()).containsExactly("Building fettle (first use, about a minute) …");
    assertThat(outcome.status()).isEqualTo(7);
  }

  @Test
  void buildsAgainOnlyWhenSourcesHaveChanged() throws Exception {
    bench.run("list");
    assertThat(bench.run("list").err()).isEmpty();
    assertThat(bench.builds()).isEqualTo(1);
    Files.writeString(bench.source(), "changed");
    assertThat(bench.run("list").err())
        .containsExactly("Building fettle (its sources have changed) …");
    assertThat(bench.run("list").err()).isEmpty();
    assertThat(bench.builds()).isEqualTo(2);
    Files.delete(bench.source());
    bench.run("list");
    assertThat(bench.builds()).as("a source was deleted").isEqualTo(3);
  }

  @Test
  void sourcesDatedInTheFutureAreBuiltOnce() throws Exception {
    Instant tomorrow = Instant.now().plus(1, ChronoUnit.DAYS);
    Files.setLastModifiedTime(bench.source(), FileTime.from(tomorrow));
    bench.run("list");
    bench.run("list");
    assertThat(bench.builds()).isEqualTo(1);
  }

  @Test
  void aFailedBuildShowsTheEndOfItsLogAndRunsNothing() throws Exception {
    bench.letBuildsFail(true);
    Outcome outcome = bench.run("list");
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err()).anyMatch(line -> line.contains("| could not find the library"));
    assertThat(outcome.err()).anyMatch(line -> line.contains("target/build.log"));
    assertThat(outcome.status()).isEqualTo(3);
    bench.letBuildsFail(false);
    assertThat(bench.run("list").status()).as("the next start tries again").isZero();
  }

  @Test
  void startsAtTheSameTimeBuildOnce() throws Exception {
    List<Process> processes = List.of(bench.start("a"), bench.start("b"), bench.start("c"));
    for (Process process : processes) {
      assertThat(Outcome.of(process).status()).isZero();
    }
    assertThat(bench.builds()).isEqualTo(1);
    assertThat(bench.lock()).doesNotExist();
  }

  @Test
  void aLockLeftByAProcessThatEndedIsTakenOver() throws Exception {
    Process ended = new ProcessBuilder("bash", "-c", "echo $$ $HOSTNAME").start();
    String owner = Outcome.of(ended).out().get(0);
    Files.createDirectories(bench.lock());
    Files.writeString(bench.lock().resolve("owner"), owner + "\n");
    assertThat(bench.run("list").status()).isZero();
    assertThat(bench.builds()).isEqualTo(1);
    assertThat(bench.lock()).doesNotExist();
  }

  @Test
  void choosesTheCompilerByTheCommand() throws Exception {
    String quick = "flag=-XX:TieredStopAtLevel=1";
    assertThat(bench.run("fit", "steel").out()).contains(quick, "flag=-XX:+UseSerialGC");
    for (String[] words :
        List.of(
            new String[] {"demo"},
            new String[] {"--home", "fit", "audit"},
            new String[] {"fit", "steel", "--monte-carlo", "100000"})) {
      assertThat(bench.run(words).out())
          .as(String.join(" ", words))
          .doesNotContain(quick)
          .contains("flag=-XX:+UseParallelGC");
    }
  }

  @Test
  void worksWithAnArchiveThatIsStaleOrSpoilt() throws Exception {
    bench.run("list");
    Path archive;
    try (var files = Files.newDirectoryStream(bench.target(), "*.jsa")) {
      archive = files.iterator().next();
    }
    assertThat(Files.size(archive)).as("an archive was made").isPositive();
    Files.delete(archive);
    Files.writeString(archive, "no archive at all");
    Outcome outcome = bench.run("list");
    assertThat(outcome.status()).isZero();
    assertThat(outcome.out()).allMatch(line -> line.matches("(arg|cwd|in|flag)=.*"));
    assertThat(outcome.err()).isEmpty();
  }

  @Test
  void refusesAJavaThatIsTooOldOrMissing() throws Exception {
    Path old = directory.resolve("old");
    Files.createDirectories(old.resolve("bin"));
    Files.writeString(old.resolve("release"), "JAVA_VERSION=\"11.0.2\"\n");
    Files.createFile(old.resolve("bin/java"));
    assertThat(old.resolve("bin/java").toFile().setExecutable(true)).isTrue();
    Outcome outcome = bench.withJavaHome(old).run("list");
    assertThat(outcome.status()).isEqualTo(3);
    assertThat(outcome.err().get(0)).contains("Java 11.0.2 was found");
    assertThat(outcome.err().get(1)).contains("17 or newer");
    Outcome none = bench.withJavaHome(directory.resolve("nowhere")).run("list");
    assertThat(none.status()).isEqualTo(3);
    assertThat(none.err().get(0)).contains("nowhere", "no bin/java");
    assertThat(bench.builds()).isZero();
  }
}
