package fettle.library;

import static fettle.library.TestLaboratory.NAME;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.block.BlockRole;
import fettle.block.ReferenceBlock;
import fettle.calibration.Analysis;
import fettle.calibration.Calibration;
import fettle.calibration.ModelChoice;
import fettle.calibration.SimulatedCampaign;
import fettle.curve.Curve;
import fettle.curve.CurveEvaluator;
import fettle.curve.CurveFile;
import fettle.fit.ModelId;
import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DraftTest {
  @TempDir Path directory;
  private Path home;
  private LaboratoryFolder laboratory;

  @BeforeEach
  void fill() throws IOException {
    home = directory.toRealPath();
    laboratory = TestLaboratory.filled(home);
  }

  private Analysis analysis(String model) {
    return Calibration.analyse(
        laboratory.campaign(NAME),
        Optional.of(new ModelChoice(new ModelId(model), "A. Person", "to see")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "polynomial-1",
        "polynomial-2",
        "polynomial-3",
        "power",
        "log-polynomial-2",
        "exponential"
      })
  void evaluatesToTheSameBits(String model) throws IOException {
    Analysis analysis = analysis(model);
    Curve before = analysis.chosen().orElseThrow().curve();
    laboratory.keepDraft(NAME, analysis);
    byte[] bytes = Files.readAllBytes(home.resolve("curves/" + NAME + "/draft/curve.json"));
    Curve after = CurveFile.read(bytes, "curve.json");
    assertEquals(before.identity(), after.identity());
    assertEquals(before.range(), after.range());
    CurveEvaluator one = before.evaluator();
    CurveEvaluator other = after.evaluator();
    double low = before.range().responseLow();
    double span = before.range().responseHigh() - low;
    for (int k = 0; k < 1000; k++) {
      double r = low + span * k / 999;
      assertEquals(one.curveAt(r), other.curveAt(r));
      assertEquals(one.resultAt(r, 3, 17), other.resultAt(r, 3, 17));
      assertEquals(one.sharedPart(r, "bench 1"), other.sharedPart(r, "bench 1"));
    }
    assertEquals(one.budget(low, 5, Double.NaN), other.budget(low, 5, Double.NaN));
    assertEquals(one.simultaneousHalfWidth(low), other.simultaneousHalfWidth(low));
  }

  @Test
  void theHashedPartHoldsNoTimeAndNoProgram() {
    StoredCurve first = TestLaboratory.keepDraft(laboratory);
    LaboratoryFolder later =
        LaboratoryFolder.open(
            home,
            Clock.offset(TestLaboratory.CLOCK, Duration.ofDays(400)),
            "fettle of another year",
            "somebody else");
    StoredCurve second = TestLaboratory.keepDraft(later);
    assertEquals(first.fingerprint(), second.fingerprint());
    assertEquals("fettle of another year", second.program());
  }

  @Test
  void namesItsInputs() {
    StoredCurve draft = TestLaboratory.keepDraft(laboratory);
    assertEquals(
        List.of(
            "readings run-1.csv",
            "readings run-2.csv",
            "readings run-3.csv",
            "readings run-4.csv",
            "block-certificate B1",
            "block-certificate B2",
            "block-certificate B3",
            "block-certificate B4",
            "block-certificate B5",
            "block-certificate B6",
            "block-certificate B7",
            "block-certificate B8",
            "roles roles",
            "policy policy.json",
            "exclusions exclusions"),
        draft.inputs().stream().map(input -> input.kind() + " " + input.name()).toList());
    assertEquals(Json.sha256(TestLaboratory.SIMULATED.run(1)), draft.inputs().get(0).sha256());
    assertEquals(Json.sha256(TestLaboratory.POLICY), draft.inputs().get(13).sha256());
  }

  @Test
  void isRecomputedFromTheInputsAsTheyWereThen() {
    laboratory.exclude(NAME, "run-1.csv", 2, "A. Person", "slipped");
    laboratory.assignRole(NAME, "B3", BlockRole.FIT);
    laboratory.keepDraft(NAME, analysis("power"));
    // All of this comes later and must not count.
    laboratory.include(NAME, "run-1.csv", 2, "A. Person", "it had not");
    laboratory.exclude(NAME, "run-2.csv", 7, "A. Person", "slipped");
    laboratory.assignRole(NAME, "B3", BlockRole.CHECK);
    laboratory.addReadings(
        NAME, Map.of("late.csv", "block,response\nB1,4900\n".getBytes(StandardCharsets.UTF_8)));
    ReferenceBlock block = laboratory.block("B1");
    laboratory.addBlocks(
        List.of(
            BlockMerge.withCertificates(
                block,
                List.of(SimulatedCampaign.certificate(160, "C-1b", LocalDate.of(2026, 6, 1))))));
    laboratory.withdrawBlock("B2", "cracked");
    Recomputation outcome = laboratory.recompute(NAME);
    assertEquals(new Recomputation(true, 0, List.of(), "recomputed, the same bytes."), outcome);
    ModelChoice choice =
        laboratory.draftAnalysis(NAME).chosen().orElseThrow().choice().orElseThrow();
    assertEquals(new ModelChoice(new ModelId("power"), "A. Person", "to see"), choice);
  }

  @Test
  void saysWhatDiffers() {
    ObjectNode kept = Json.object();
    kept.set("a", Json.numbers(new double[] {1, 2, 3}));
    kept.put("model", "power").put("gone", 1);
    ObjectNode again = Json.object();
    again.set("a", Json.numbers(new double[] {1, 2 * (1 + 1e-13), 3.1}));
    again.put("model", "exponential").put("new", 1);
    Recomputation outcome = ContentComparison.of(kept, again, "fettle 0.1");
    assertEquals(
        List.of(
            "$.a[2] was 3, is 3.1",
            "$.gone was 1, is absent",
            "$.model was \"power\", is \"exponential\"",
            "$.new was absent, is 1"),
        outcome.differences());
    assertFalse(outcome.agrees());
    again.set("a", Json.numbers(new double[] {1, 2 * (1 + 1e-13), 3}));
    again.put("model", "power").put("gone", 1).remove("new");
    Recomputation close = ContentComparison.of(kept, again, "fettle 0.1");
    assertTrue(close.agrees());
    assertFalse(close.identical());
    assertEquals(1e-13, close.largestRelativeDifference(), 1e-15);
    assertEquals(
        "recomputed, the same within a relative 1e-12; it was made by fettle 0.1.",
        close.message());
  }

  private static String refusal(org.junit.jupiter.api.function.Executable action) {
    return assertThrows(InputRefusedException.class, action).getMessage();
  }

  @Test
  void isNotKeptWhenTheDossierHasChangedSinceTheFit() {
    Analysis analysis = analysis("power");
    laboratory.exclude(NAME, "run-1.csv", 2, "A. Person", "slipped");
    assertEquals(
        """
        The dossier has changed since the fit was made.
          where     dossier steel-hv10
          expected  a fit of the readings, exclusions, blocks and roles as they are now
          do        fit again""",
        refusal(() -> laboratory.keepDraft(NAME, analysis)));
    assertFalse(laboratory.hasDraft(NAME));
    assertEquals(
        """
        Dossier steel-hv10 has no draft.
          where     %s
          expected  a draft, which a fit keeps
          do        fit the dossier first"""
            .formatted(home.resolve("curves/" + NAME + "/draft/curve.json")),
        refusal(() -> laboratory.recompute(NAME)));
  }

  private byte[] written() throws IOException {
    return Files.readAllBytes(TestLaboratory.keepDraft(laboratory).file());
  }

  private static byte[] replaced(byte[] bytes, String from, String to) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    assertThat(text).contains(from);
    return text.replace(from, to).getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void aCurveWhoseContentWasAlteredIsRefused() throws IOException {
    byte[] bytes = replaced(written(), "\"model\":\"power\"", "\"model\":\"exponential\"");
    String message = refusal(() -> CurveJson.read(bytes, Path.of("curve.json")));
    assertThat(message)
        .matches(
            """
            (?s)The curve has been altered: its content does not have its fingerprint.
              where     curve.json
              expected  fingerprint [0-9a-f]{64}; the content has [0-9a-f]{64}
              do        put the file back from a backup, or fit again; nothing is computed from it\
            """);
  }

  @Test
  void readsWithTheJdkAloneOnlyWhatIsWhole() throws IOException {
    byte[] bytes = written();
    for (int length = 0; length < bytes.length; length += 97) {
      byte[] cut = Arrays.copyOf(bytes, length);
      String message = refusal(() -> CurveFile.read(cut, "c.json"));
      assertEquals(
          """
          The file %s.
            where     c.json, line 1
            expected  a whole JSON file
            do        take the file anew from the laboratory folder or a backup"""
              .formatted(length == 0 ? "is empty" : "ends too early"),
          message);
    }
    assertEquals(
        """
        The file is of another kind: "fettle-block".
          where     c.json
          expected  a file of format fettle-curve
          do        name the file curve.json of a dossier""",
        refusal(() -> CurveFile.read(replaced(bytes, "fettle-curve", "fettle-block"), "c.json")));
    assertEquals(
        """
        The file is of format number 2, which is too new.
          where     c.json
          expected  format number 1
          do        use a newer version of the program""",
        refusal(
            () ->
                CurveFile.read(
                    replaced(bytes, "\"formatVersion\":1", "\"formatVersion\":2"), "c.json")));
    assertEquals(
        """
        The file is of format number 0, which is too old.
          where     c.json
          expected  format number 1
          do        take the file anew from the laboratory folder or a backup""",
        refusal(
            () ->
                CurveFile.read(
                    replaced(bytes, "\"formatVersion\":1", "\"formatVersion\":0"), "c.json")));
    assertEquals(
        """
        The file is well-formed, but does not hold what a curve file holds.
          where     c.json, at $.content.simultaneousFactor
          expected  a number
          do        take the file anew from the laboratory folder or a backup""",
        refusal(
            () ->
                CurveFile.read(
                    replaced(bytes, "simultaneousFactor", "simultaneousFaktor"), "c.json")));
    assertEquals(
        "The file does not say that it is a curve file.",
        refusal(() -> CurveFile.read("{}".getBytes(StandardCharsets.UTF_8), "c.json"))
            .split("\n")[0]);
    assertArrayEquals(bytes, Json.canonical(Json.parse(bytes, "c.json")));
  }
}
