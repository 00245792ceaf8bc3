package fettle.library;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fettle.block.BlocksCsv;
import fettle.calibration.Analysis;
import fettle.calibration.Calibration;
import fettle.curve.Curve;
import fettle.curve.CurveFile;
import fettle.curve.CurveIdentity;
import fettle.demo.DemoDossier;
import fettle.demo.DemoLaboratory;
import fettle.quantity.ResponseKind;
import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The laboratory folder, on the demo laboratory's files. */
class LaboratoryFolderTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-25T09:00:00Z"), ZoneOffset.UTC);
  private static final DemoLaboratory DEMO = DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED);
  private static final String NAME = "nab-as-cast-hbw";

  @TempDir static Path incoming;
  @TempDir Path home;

  private LaboratoryFolder laboratory;

  @BeforeAll
  static void write() throws IOException {
    DEMO.writeTo(incoming);
  }

  @BeforeEach
  void begin() {
    laboratory = LaboratoryFolder.open(home, CLOCK, "fettle test", "tester");
  }

  private static byte[] bytes(String file) throws IOException {
    return Files.readAllBytes(incoming.resolve("incoming").resolve(file));
  }

  private static DemoDossier demo() {
    return DEMO.dossiers().stream().filter(d -> d.name().equals(NAME)).findFirst().orElseThrow();
  }

  private static CurveIdentity identity(String name) {
    DemoDossier demo = demo();
    return new CurveIdentity(
        name,
        Optional.of(demo.title()),
        demo.material(),
        demo.method(),
        demo.scale(),
        ResponseKind.usualOf(demo.method()),
        demo.testForceNewtons(),
        Optional.of(demo.instrument()),
        Optional.of(demo.probe()),
        demo.zeroFrequencyHz());
  }

  private static Map<String, byte[]> runs() throws IOException {
    Map<String, byte[]> runs = new LinkedHashMap<>();
    for (String file : demo().readingFiles()) {
      runs.put(file, bytes(NAME + "/" + file));
    }
    return runs;
  }

  private void fill() throws IOException {
    laboratory.addBlocks(BlocksCsv.read(bytes("blocks.csv"), "blocks.csv"));
    laboratory.createDossier(identity(NAME), Optional.of(bytes("policy.json")), "policy.json");
    laboratory.addReadings(NAME, runs());
  }

  private StoredCurve draft() throws IOException {
    fill();
    return laboratory.keepDraft(
        NAME, Calibration.analyse(laboratory.campaign(NAME), Optional.empty()));
  }

  @Test
  void nothingIsMadeBeforeSomethingIsKept() throws IOException {
    assertThat(laboratory.blocks()).isEmpty();
    assertThat(laboratory.dossiers()).isEmpty();
    try (var entries = Files.list(home)) {
      assertThat(entries).isEmpty();
    }
  }

  @Test
  void readingsAreKeptByteForByte() throws IOException {
    fill();
    for (Map.Entry<String, byte[]> run : runs().entrySet()) {
      assertThat(home.resolve("curves/" + NAME + "/readings/" + run.getKey()))
          .hasBinaryContent(run.getValue());
    }
    assertThat(laboratory.campaign(NAME).readings()).isEqualTo(DEMO.readings(NAME));
  }

  @Test
  void blocksComeBackAsTheyWent() throws IOException {
    fill();
    assertThat(laboratory.blocks()).containsExactlyInAnyOrderElementsOf(DEMO.blocks());
    AddedBlocks again = laboratory.addBlocks(BlocksCsv.read(bytes("blocks.csv"), "blocks.csv"));
    assertThat(again.added()).isEmpty();
    assertThat(again.extended()).isEmpty();
    assertThat(again.unchanged()).hasSize(DEMO.blocks().size());
  }

  @Test
  void theDraftEvaluatesToTheBitAsTheAnalysisDid() throws IOException {
    fill();
    Analysis analysis = Calibration.analyse(laboratory.campaign(NAME), Optional.empty());
    Curve before = analysis.chosen().orElseThrow().curve();
    laboratory.keepDraft(NAME, analysis);
    Curve after =
        CurveFile.read(
            Files.readAllBytes(home.resolve("curves/" + NAME + "/draft/curve.json")), "curve.json");
    for (int k = 0; k < 1000; k++) {
      double r =
          before.range().responseLow()
              + k * (before.range().responseHigh() - before.range().responseLow()) / 999;
      assertThat(after.evaluator().resultAt(r, 3, 7))
          .isEqualTo(before.evaluator().resultAt(r, 3, 7));
    }
    assertThat(after.range()).isEqualTo(before.range());
    assertThat(after.identity()).isEqualTo(before.identity());
  }

  @Test
  void recomputingGivesTheSameBytes() throws IOException {
    draft();
    Recomputation outcome = laboratory.recompute(NAME);
    assertThat(outcome.identical()).isTrue();
    assertThat(outcome.message()).isEqualTo("recomputed, the same bytes.");
  }

  @Test
  void recomputingAfterAnExclusionSaysWhatDiffers() throws IOException {
    draft();
    var reading = laboratory.campaign(NAME).readings().get(20);
    laboratory.exclude(NAME, reading.file(), reading.line(), "A. Person", "slipped");
    Recomputation outcome = laboratory.recompute(NAME);
    assertThat(outcome.identical()).isFalse();
    assertThat(outcome.differences()).anyMatch(d -> d.startsWith("/inputs/"));
  }

  @Test
  void anExclusionCanBeTakenBackAndTheHistoryKeepsBoth() throws IOException {
    fill();
    var reading = laboratory.campaign(NAME).readings().get(3);
    laboratory.exclude(NAME, reading.file(), reading.line(), "A. Person", "slipped");
    assertThat(laboratory.campaign(NAME).isExcluded(reading)).isTrue();
    laboratory.include(NAME, reading.file(), reading.line(), "A. Person", "it had not");
    assertThat(laboratory.campaign(NAME).isExcluded(reading)).isFalse();
    List<String> lines = Files.readAllLines(home.resolve("curves/" + NAME + "/history.jsonl"));
    assertThat(lines).hasSize(7);
    assertThat(lines.get(5)).contains("reading-excluded").contains("slipped");
  }

  @Test
  void everyByteOfADraftIsGuarded() throws IOException {
    Path file = draft().file();
    byte[] good = Files.readAllBytes(file);
    // The program's name stands outside what is hashed, last but the state.
    int end = new String(good, StandardCharsets.UTF_8).indexOf("\"program\"");
    for (int at = 0; at < end; at += 61) {
      byte[] bad = good.clone();
      bad[at] ^= 1;
      Files.write(file, bad);
      assertThatThrownBy(() -> laboratory.draft(NAME)).isInstanceOf(InputRefusedException.class);
    }
  }

  @Test
  void aChangedReadingsFileIsNamed() throws IOException {
    fill();
    Path file = home.resolve("curves/" + NAME + "/readings/run-2.csv");
    Files.writeString(file, Files.readString(file) + "\n");
    assertThatThrownBy(() -> laboratory.campaign(NAME))
        .isInstanceOf(InputRefusedException.class)
        .hasMessageStartingWith("The readings file run-2.csv was changed after it was added.\n");
  }

  @Test
  void aMissingReadingsFileIsNamed() throws IOException {
    fill();
    Files.delete(home.resolve("curves/" + NAME + "/readings/run-3.csv"));
    assertThatThrownBy(() -> laboratory.campaign(NAME))
        .isInstanceOf(InputRefusedException.class)
        .hasMessageStartingWith("The readings file run-3.csv is missing.\n");
  }

  @Test
  void aChangedHistoryLineBreaksTheChain() throws IOException {
    fill();
    Path file = home.resolve("curves/" + NAME + "/history.jsonl");
    Files.writeString(file, Files.readString(file).replaceFirst("run-2.csv", "run-9.csv"));
    assertThatThrownBy(() -> laboratory.campaign(NAME))
        .isInstanceOf(InputRefusedException.class)
        .hasMessageStartingWith(
            "The history is broken: this line does not follow the one before.\n  where     "
                + file
                + ", line 4\n");
  }

  @Test
  void aLastLineCutByACrashIsForgotten() throws IOException {
    fill();
    Path file = home.resolve("curves/" + NAME + "/history.jsonl");
    Files.writeString(file, Files.readString(file) + "{\"format\":\"fettle-ev");
    var reading = laboratory.campaign(NAME).readings().get(0);
    laboratory.exclude(NAME, reading.file(), reading.line(), "A. Person", "slipped");
    assertThat(laboratory.campaign(NAME).isExcluded(reading)).isTrue();
  }

  @Test
  void readingsOnAnUnknownBlockAddNothing() throws IOException {
    fill();
    Map<String, byte[]> two = new LinkedHashMap<>();
    two.put("good.csv", "block,response\nNR-01,500\n".getBytes(StandardCharsets.UTF_8));
    two.put("bad.csv", "block,response\nNOBODY,500\n".getBytes(StandardCharsets.UTF_8));
    assertThatThrownBy(() -> laboratory.addReadings(NAME, two))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            """
            Block "NOBODY" is not in the laboratory's reference blocks.
              where     bad.csv, line 2, column block
              expected  a block that was added before its readings
              do        add it with `fettle block add`, or correct its name in the file; nothing was added""");
    assertThat(home.resolve("curves/" + NAME + "/readings/good.csv")).doesNotExist();
  }

  @Test
  void anotherFileOfTheSameNameIsRefused() throws IOException {
    fill();
    Map<String, byte[]> other = Map.of("run-1.csv", runs().get("run-2.csv"));
    assertThatThrownBy(() -> laboratory.addReadings(NAME, other))
        .isInstanceOf(InputRefusedException.class)
        .hasMessageStartingWith("The dossier holds another file named run-1.csv.\n");
    assertThat(laboratory.addReadings(NAME, runs()).unchanged()).hasSize(4);
  }

  @Test
  void theSameReadingsUnderAnotherNameAreRefused() throws IOException {
    fill();
    Map<String, byte[]> again = Map.of("copy.csv", runs().get("run-2.csv"));
    assertThatThrownBy(() -> laboratory.addReadings(NAME, again))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            """
            65 of the 65 readings of copy.csv are in run-2.csv already.
              where     copy.csv
              expected  readings that are not in the dossier yet
              do        add only new readings; nothing was added""");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "../up", "Upper", "con", "nul", "com1", "-first", "a/b", "a b", "a\u0007b"})
  void namesThatCannotBeAFolderAreRefused(String name) {
    assertThatThrownBy(() -> laboratory.createDossier(identity(name), Optional.empty(), ""))
        .isInstanceOf(InputRefusedException.class)
        .hasMessageContaining("cannot be a dossier's name.");
    assertThat(home.resolve("curves")).doesNotExist();
  }

  @Test
  void aPolicyWithAMisspeltKeyIsRefusedBeforeTheDossierBegins() throws IOException {
    String policy =
        new String(bytes("policy.json"), StandardCharsets.UTF_8)
            .replace("\"permissibleError\"", "\"permissableError\"");
    assertThatThrownBy(
            () ->
                laboratory.createDossier(
                    identity(NAME), Optional.of(policy.getBytes(StandardCharsets.UTF_8)), "p.json"))
        .isInstanceOf(InputRefusedException.class)
        .hasMessageStartingWith("The key \"permissableError\" is not known here.\n");
    assertThat(laboratory.dossiers()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"write", "append", "move"})
  void aFailureAtAnyStepLeavesTheOldStateOrTheNewOne(String step) throws IOException {
    draft();
    String before = Files.readString(home.resolve("curves/" + NAME + "/draft/curve.json"));
    var reading = laboratory.campaign(NAME).readings().get(5);
    LaboratoryFolder failing =
        LaboratoryFolder.open(home, CLOCK, "fettle test", "tester", new FailingSteps(step));
    if (step.equals("append")) {
      assertThatThrownBy(
              () -> failing.exclude(NAME, reading.file(), reading.line(), "A. Person", "slip"))
          .isInstanceOf(UncheckedIOException.class);
    } else {
      Analysis analysis = Calibration.analyse(laboratory.campaign(NAME), Optional.empty());
      assertThatThrownBy(() -> failing.keepDraft(NAME, analysis))
          .isInstanceOf(UncheckedIOException.class);
    }
    LaboratoryFolder after = LaboratoryFolder.open(home, CLOCK, "fettle test", "tester");
    assertThat(Files.readString(after.draft(NAME).file())).isEqualTo(before);
    assertThat(after.campaign(NAME).isExcluded(reading)).isFalse();
    assertThat(after.recompute(NAME).identical()).isTrue();
  }

  /** A disk on which one sort of step fails half-way. */
  private record FailingSteps(String step) implements FileSteps {
    @Override
    public void writeForced(Path file, byte[] bytes) throws IOException {
      if (step.equals("write")) {
        DISK.writeForced(file, java.util.Arrays.copyOf(bytes, bytes.length / 2));
        throw new IOException("No space left on device");
      }
      DISK.writeForced(file, bytes);
    }

    @Override
    public void appendForced(Path file, byte[] bytes) throws IOException {
      if (step.equals("append")) {
        DISK.appendForced(file, java.util.Arrays.copyOf(bytes, bytes.length / 2));
        throw new IOException("No space left on device");
      }
      DISK.appendForced(file, bytes);
    }

    @Override
    public void moveIntoPlace(Path from, Path to) throws IOException {
      if (step.equals("move")) {
        throw new IOException("Access is denied");
      }
      DISK.moveIntoPlace(from, to);
    }

    @Override
    public void forceFolder(Path folder) {
      DISK.forceFolder(folder);
    }
  }

  @Test
  void twoWritersLoseNoEvent() throws Exception {
    fill();
    var readings = laboratory.campaign(NAME).readings();
    Thread[] threads = new Thread[4];
    for (int t = 0; t < threads.length; t++) {
      int first = t;
      LaboratoryFolder own = LaboratoryFolder.open(home, CLOCK, "fettle test", "writer " + t);
      threads[t] =
          new Thread(
              () -> {
                for (int k = first; k < 40; k += threads.length) {
                  own.exclude(
                      NAME, readings.get(k).file(), readings.get(k).line(), "A. Person", "no " + k);
                }
              });
      threads[t].start();
    }
    for (Thread thread : threads) {
      thread.join();
    }
    assertThat(laboratory.campaign(NAME).exclusions()).hasSize(40);
  }
}
