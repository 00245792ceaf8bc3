package fettle.library;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fettle.block.BlockRole;
import fettle.block.ReferenceBlock;
import fettle.calibration.SimulatedCampaign;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A crash between any two steps, and in the middle of any, leaves the old state or the new one. */
class CrashTest {
  @TempDir Path directory;

  /** What one can ask of the folder; the crash is tried at each of its steps. */
  enum Change {
    BLOCKS(l -> {}, l -> l.addBlocks(TestLaboratory.SIMULATED.blocks())),
    WITHDRAWAL(CrashTest::blocks, l -> l.withdrawBlock("B3", "cracked")),
    DOSSIER(
        CrashTest::blocks,
        l ->
            l.createDossier(
                SimulatedCampaign.identity(TestLaboratory.NAME),
                Optional.of(TestLaboratory.POLICY),
                "policy.json")),
    READINGS(
        CrashTest::dossier,
        l -> l.addReadings(TestLaboratory.NAME, TestLaboratory.SIMULATED.runs())),
    ROLE(CrashTest::readings, l -> l.assignRole(TestLaboratory.NAME, "B1", BlockRole.DRIFT)),
    EXCLUSION(
        CrashTest::readings,
        l -> l.exclude(TestLaboratory.NAME, "run-1.csv", 2, "A. Person", "slipped")),
    FIRST_DRAFT(CrashTest::readings, TestLaboratory::keepDraft),
    NEXT_DRAFT(CrashTest::changedDraft, TestLaboratory::keepDraft);

    private final Consumer<LaboratoryFolder> before;
    private final Consumer<LaboratoryFolder> change;

    Change(Consumer<LaboratoryFolder> before, Consumer<LaboratoryFolder> change) {
      this.before = before;
      this.change = change;
    }
  }

  private static void blocks(LaboratoryFolder laboratory) {
    laboratory.addBlocks(TestLaboratory.SIMULATED.blocks());
  }

  private static void dossier(LaboratoryFolder laboratory) {
    blocks(laboratory);
    Change.DOSSIER.change.accept(laboratory);
  }

  private static void readings(LaboratoryFolder laboratory) {
    dossier(laboratory);
    Change.READINGS.change.accept(laboratory);
  }

  private static void changedDraft(LaboratoryFolder laboratory) {
    readings(laboratory);
    TestLaboratory.keepDraft(laboratory);
    Change.EXCLUSION.change.accept(laboratory);
  }

  /** All that can be seen of a folder through its doors. */
  private static List<Object> state(LaboratoryFolder laboratory) {
    List<Object> state = new ArrayList<>();
    List<ReferenceBlock> blocks = laboratory.blocks();
    state.add(blocks);
    for (String name : laboratory.dossiers()) {
      state.add(laboratory.campaign(name));
      state.add(laboratory.hasDraft(name) ? laboratory.draft(name).fingerprint() : "no draft");
    }
    return state;
  }

  @ParameterizedTest
  @EnumSource(Change.class)
  void leavesTheOldStateOrTheNewOne(Change change) throws IOException {
    Path old = Files.createDirectory(directory.resolve("old"));
    change.before.accept(TestLaboratory.open(old));
    Path whole = Files.createDirectory(directory.resolve("whole"));
    change.before.accept(TestLaboratory.open(whole));
    CountedSteps counter = new CountedSteps(Integer.MAX_VALUE, false);
    change.change.accept(TestLaboratory.open(whole, counter));
    List<Object> before = state(TestLaboratory.open(old));
    List<Object> after = state(TestLaboratory.open(whole));
    assertThat(after).isNotEqualTo(before);
    assertThat(counter.taken).isGreaterThan(2);
    boolean sawOld = false;
    boolean sawNew = false;
    for (int step = 0; step < counter.taken; step++) {
      for (boolean half : new boolean[] {false, true}) {
        Path home = copy(old, directory.resolve(step + (half ? "-half" : "-none")));
        LaboratoryFolder failing = TestLaboratory.open(home, new CountedSteps(step, half));
        assertThatThrownBy(() -> change.change.accept(failing)).isInstanceOf(Crash.class);
        List<Object> found = state(TestLaboratory.open(home));
        assertThat(found).as("after a crash at step %s", step).isIn(before, after);
        if (found.equals(before)) {
          sawOld = true;
          change.change.accept(TestLaboratory.open(home));
          assertThat(state(TestLaboratory.open(home))).isEqualTo(after);
        } else {
          sawNew = true;
        }
        assertThat(TestLaboratory.open(home).verifyBlockChain().isSound()).isTrue();
      }
    }
    assertThat(sawOld && sawNew).isTrue();
  }

  private static Path copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Files.copy(file, to.resolve(from.relativize(file).toString()));
      }
    }
    return to;
  }

  /** The program's end. */
  private static final class Crash extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  /** Takes so many steps and then ends the program, at once or in the middle of the step. */
  private static final class CountedSteps implements FileOperations {
    private final DiskOperations disk = new DiskOperations();
    private final int last;
    private final boolean half;
    private int taken;

    CountedSteps(int last, boolean half) {
      this.last = last;
      this.half = half;
    }

    /** Whether this step is the one to be left half-way. */
    private boolean breaksHere() {
      if (taken++ == last) {
        if (!half) {
          throw new Crash();
        }
        return true;
      }
      return false;
    }

    @Override
    public void createDirectories(Path place) throws IOException {
      boolean breaks = breaksHere();
      disk.createDirectories(place);
      crashIf(breaks);
    }

    @Override
    public void writeForced(Path file, byte[] bytes) throws IOException {
      boolean breaks = breaksHere();
      disk.writeForced(file, breaks ? Arrays.copyOf(bytes, bytes.length / 2) : bytes);
      crashIf(breaks);
    }

    @Override
    public void appendForced(Path file, long length, byte[] bytes) throws IOException {
      boolean breaks = breaksHere();
      disk.appendForced(file, length, breaks ? Arrays.copyOf(bytes, bytes.length / 2) : bytes);
      crashIf(breaks);
    }

    @Override
    public void moveIntoPlace(Path from, Path to) throws IOException {
      boolean breaks = breaksHere();
      disk.moveIntoPlace(from, to);
      crashIf(breaks);
    }

    @Override
    public void forceDirectory(Path place) throws IOException {
      boolean breaks = breaksHere();
      disk.forceDirectory(place);
      crashIf(breaks);
    }

    @Override
    public void delete(Path file) throws IOException {
      boolean breaks = breaksHere();
      disk.delete(file);
      crashIf(breaks);
    }

    private static void crashIf(boolean breaks) {
      if (breaks) {
        throw new Crash();
      }
    }
  }
}
