package fettle.library;

import static fettle.library.TestLaboratory.NAME;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several threads and processes at work in one folder. */
class ConcurrencyTest {
  @TempDir Path home;

  /** Leaves out all readings of one run: what another process does in these tests. */
  public static void main(String[] args) {
    LaboratoryFolder laboratory =
        LaboratoryFolder.open(
            Path.of(args[0]),
            TestLaboratory.CLOCK,
            "fettle test",
            "tester, process " + ProcessHandle.current().pid(),
            new DiskOperations(),
            Long.parseLong(args[2]));
    excludeAll(laboratory, args[1]);
  }

  private static void excludeAll(LaboratoryFolder laboratory, String run) {
    for (int line = 2; line <= 25; line++) {
      laboratory.exclude(NAME, run, line, "A. Person", "line " + line);
    }
  }

  private Process process(String run, long patienceMs) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
            ConcurrencyTest.class.getName(),
            home.toString(),
            run,
            Long.toString(patienceMs))
        .redirectErrorStream(true)
        .start();
  }

  private static String output(Process process) throws IOException, InterruptedException {
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    return text;
  }

  @Test
  void twoProcessesAndTwoThreadsLoseNoEvent() throws Exception {
    TestLaboratory.filled(home);
    Process first = process("run-1.csv", 60_000);
    Process second = process("run-2.csv", 60_000);
    ExecutorService threads = Executors.newFixedThreadPool(2);
    List<Callable<Void>> tasks = new ArrayList<>();
    for (String run : List.of("run-3.csv", "run-4.csv")) {
      LaboratoryFolder own =
          LaboratoryFolder.open(
              home, TestLaboratory.CLOCK, "fettle test", "thread", new DiskOperations(), 60_000);
      tasks.add(
          () -> {
            excludeAll(own, run);
            return null;
          });
    }
    for (Future<Void> task : threads.invokeAll(tasks)) {
      task.get();
    }
    threads.shutdown();
    assertEquals("", output(first));
    assertEquals("", output(second));
    LaboratoryFolder laboratory = TestLaboratory.open(home);
    assertEquals(96, laboratory.campaign(NAME).exclusions().size());
    assertEquals(98, laboratory.verifyChain(NAME).events());
    assertTrue(laboratory.verifyChain(NAME).isSound());
  }

  @Test
  void whoWaitsInVainIsToldWhoHoldsTheFolder() throws Exception {
    TestLaboratory.filled(home);
    Path real = home.toRealPath();
    FolderLock lock = new FolderLock(real, TestLaboratory.CLOCK, "Quality desk, process 42", 0);
    CountDownLatch held = new CountDownLatch(1);
    CountDownLatch done = new CountDownLatch(1);
    Thread holder =
        new Thread(
            () ->
                lock.holding(
                    () -> {
                      held.countDown();
                      try {
                        return done.await(60, TimeUnit.SECONDS);
                      } catch (InterruptedException stopped) {
                        return false;
                      }
                    }));
    holder.start();
    held.await();
    // A second thread that gives up must not take the lock away from the first: see fcntl(2).
    InputRefusedException refusal =
        assertThrows(
            InputRefusedException.class,
            () ->
                LaboratoryFolder.open(
                        home, TestLaboratory.CLOCK, "fettle test", "x", new DiskOperations(), 10)
                    .exclude(NAME, "run-1.csv", 2, "A. Person", "slipped"));
    assertEquals(
        """
        The laboratory folder is being changed by another task of this program.
          where     %s
          expected  a folder that nobody else is changing
          do        wait until that is done, and try again"""
            .formatted(real),
        refusal.getMessage());
    assertThat(output(process("run-1.csv", 100)))
        .contains(
            "The laboratory folder is being changed by Quality desk, process 42, since"
                + " 2026-11-25T09:00:00Z.");
    done.countDown();
    holder.join();
    assertEquals("", output(process("run-1.csv", 100)));
  }

  @Test
  void aLockFileLeftBehindLocksNothing() throws IOException {
    Files.writeString(home.resolve(".fettle.lock"), "a process that died\n");
    TestLaboratory.filled(home);
  }
}
