package fettle.acceptance;

import static fettle.acceptance.Answers.objections;
import static fettle.acceptance.SimulatedCampaign.good;
import static fettle.acceptance.SimulatedCampaign.some;
import static org.assertj.core.api.Assertions.assertThat;

import fettle.quantity.ResponseKind;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Instrument, session and readings: every check fails where it should, in these words. */
class SessionChecksTest {
  @Test
  void namesTheRunThatBeginsOnTheAlloy() {
    assertThat(
            objections(
                new StandardBlockBefore(),
                good()
                    .readings(
                        r ->
                            !(r.block().equals("S1")
                                && r.file().equals("run-2.csv")
                                && r.line() < 10))))
        .containsExactly(
            "FAILED, stops release: Run R2 begins on block B8 (run-2.csv, line 5) before "
                + "any reading on a standard block.");
  }

  @Test
  void namesTheRunWithoutAStandardBlock() {
    assertThat(
            objections(
                new StandardBlockBefore(),
                good().readings(r -> !(r.block().equals("S1") && r.file().equals("run-2.csv")))))
        .containsExactly(
            "FAILED, stops release: Run R2 begins on block B8 (run-2.csv, line 5) and "
                + "holds no reading on a standard block.");
  }

  @Test
  void asksForAStandardBlock() {
    assertThat(objections(new StandardBlockBefore(), good().without("S1")))
        .containsExactly(
            "DATA_MISSING, stops release: No readings on a standard block; give a steel "
                + "block the role standard and read it at the start and at the end of every "
                + "run.");
  }

  @Test
  void refusesARunInWhichTheProbeMoved() {
    assertThat(
            objections(
                new StandardBlockChange(),
                good()
                    .reading(
                        r ->
                            r.block().equals("S1") && r.file().equals("run-3.csv") && r.line() > 10
                                ? With.component(r, "displayed", r.displayed() + 60)
                                : r)))
        .containsExactly(
            "FAILED, stops release: Run R3: standard block S1 read 2537.7 Hz at the "
                + "start (3 readings) and 2599.3 Hz at the end (3), a change of 62 Hz or 4.0 "
                + "of its standard uncertainties, above the limit 2.8 (default).");
  }

  @Test
  void asksForTheStandardBlockAtTheEnd() {
    assertThat(
            objections(
                new StandardBlockChange(),
                good()
                    .readings(
                        r ->
                            !(r.block().equals("S1")
                                && r.file().equals("run-2.csv")
                                && r.line() > 10))))
        .containsExactly(
            "DATA_MISSING, stops release: Run R2 has no standard block read both before "
                + "and after other blocks; read one at the start and again at the end of the "
                + "run.");
  }

  @Test
  void seesAWanderingRod() {
    assertThat(
            objections(
                new FreeFrequency(),
                good()
                    .reading(
                        r ->
                            r.file().equals("run-1.csv") && r.line() > 20
                                ? With.component(
                                    r,
                                    "freeFrequencyHz",
                                    some(r.freeFrequencyHz().orElseThrow() + 37))
                                : r)))
        .containsExactly(
            "FAILED, needs a written reason: Run R1: the free-rod frequency freed of the "
                + "temperature's share ranges over 40 Hz between run-1.csv, line 17 and "
                + "run-1.csv, line 22, above the limit 15 Hz (default).");
  }

  @Test
  void acceptsARodThatFollowsTheTemperature() {
    assertThat(
            objections(
                new FreeFrequency(),
                good()
                    .reading(
                        r ->
                            r.file().equals("run-1.csv") && r.line() > 20
                                ? With.component(
                                    With.component(
                                        r,
                                        "freeFrequencyHz",
                                        some(r.freeFrequencyHz().orElseThrow() + 37)),
                                    "temperatureC",
                                    some(19))
                                : r)))
        .isEmpty();
  }

  @Test
  void asksForTheFreeFrequency() {
    assertThat(
            objections(
                new FreeFrequency(),
                good()
                    .reading(
                        r ->
                            r.line() == 12
                                ? With.component(r, "freeFrequencyHz", OptionalDouble.empty())
                                : r)))
        .containsExactly(
            "DATA_MISSING, stops release: Run R1: 1 of 33 readings have no free-rod "
                + "frequency, the first in run-1.csv, line 12; record it in the column "
                + "free_frequency_hz.",
            "DATA_MISSING, stops release: Run R2: 1 of 33 readings have no free-rod "
                + "frequency, the first in run-2.csv, line 12; record it in the column "
                + "free_frequency_hz.",
            "DATA_MISSING, stops release: Run R3: 1 of 33 readings have no free-rod "
                + "frequency, the first in run-3.csv, line 12; record it in the column "
                + "free_frequency_hz.",
            "DATA_MISSING, stops release: Run R4: 1 of 33 readings have no free-rod "
                + "frequency, the first in run-4.csv, line 12; record it in the column "
                + "free_frequency_hz.");
  }

  @Test
  void findsTheFileInWhichASteelConversionWasLeftOn() {
    assertThat(
            objections(
                new RawResponse(),
                good()
                    .reading(
                        r ->
                            r.file().equals("run-2.csv") && !r.block().equals("S1")
                                ? With.component(
                                    r,
                                    "displayed",
                                    2.7 * 250 * Math.pow(1552 / r.displayed(), 2.05))
                                : r)))
        .containsExactly(
            "FAILED, stops release: File run-2.csv: the slope of ln response against ln "
                + "hardness is 1.0 with correlation 1.0; values that rise in step with the "
                + "hardness look like displayed hardness, not like a raw response.");
  }

  @Test
  void findsAQuantityThatRisesWithHardness() {
    assertThat(
            objections(
                new RawResponse(),
                good()
                    .reading(
                        r ->
                            r.file().equals("run-2.csv") && !r.block().equals("S1")
                                ? With.component(r, "displayed", 1e6 / r.displayed())
                                : r)))
        .containsExactly(
            "FAILED, stops release: File run-2.csv: the slope of ln response against ln "
                + "hardness is 0.49 with correlation 1.0; a frequency shift falls with "
                + "hardness, so these look like another quantity, not like a raw response.");
  }

  @Test
  void cannotTellFromTwoBlocks() {
    assertThat(
            objections(
                new RawResponse(),
                good()
                    .reading(
                        r -> r.block().equals("B1") ? With.component(r, "file", "odd.csv") : r)))
        .containsExactly(
            "DATA_MISSING, needs a written reason: File odd.csv holds readings on fewer "
                + "than three blocks, too few to tell a response from a hardness; look at the "
                + "instrument's setting and state it.");
  }

  @Test
  void asksForTheBaseSetting() {
    assertThat(
            objections(
                new RawResponse(),
                good().identified("responseKind", ResponseKind.INDICATED_HARDNESS)))
        .containsExactly(
            "DATA_MISSING, stops release: The response is an indicated hardness, but "
                + "run-1.csv, line 5 does not say under which setting; write \"base setting: …\" "
                + "into the note of every reading.");
  }

  @Test
  void refusesTwoBaseSettings() {
    assertThat(
            objections(
                new RawResponse(),
                good()
                    .identified("responseKind", ResponseKind.INDICATED_HARDNESS)
                    .reading(
                        r ->
                            With.component(
                                r,
                                "note",
                                Optional.of(
                                    "base setting: " + (r.line() < 30 ? "steel" : "copper"))))))
        .containsExactly(
            "FAILED, stops release: The indicated hardnesses were taken under different "
                + "settings: steel; copper (from run-1.csv, line 30 on).");
  }

  @Test
  void acceptsOneBaseSetting() {
    assertThat(
            objections(
                new RawResponse(),
                good()
                    .identified("responseKind", ResponseKind.INDICATED_HARDNESS)
                    .reading("note", Optional.of("base setting: steel"))))
        .isEmpty();
  }

  @Test
  void countsTheReadingsOfAnotherProbe() {
    assertThat(
            objections(
                new OneProbe(),
                good()
                    .reading(
                        r ->
                            r.file().equals("run-4.csv")
                                ? With.component(r, "probe", Optional.of("P-50"))
                                : r)))
        .containsExactly(
            "FAILED, stops release: The curve is for probe P-49, but 33 readings were "
                + "taken with probe P-50, the first in run-4.csv, line 5.");
  }

  @Test
  void asksForTheProbeOfTheDossier() {
    assertThat(objections(new OneProbe(), good().identified("probe", Optional.empty())))
        .containsExactly(
            "DATA_MISSING, needs a written reason: The dossier does not name its probe; "
                + "give its mark with --probe in the dossier.");
  }

  @Test
  void asksForTheProbeOfTheReadings() {
    assertThat(
            objections(
                new OneProbe(),
                good()
                    .reading(
                        r -> r.line() < 10 ? With.component(r, "probe", Optional.empty()) : r)))
        .containsExactly(
            "DATA_MISSING, needs a written reason: 20 of 132 readings do not name their "
                + "probe, the first in run-1.csv, line 5; fill the column probe of the "
                + "readings table.");
  }

  @Test
  void findsReadingsTooCloseTogether() {
    assertThat(
            objections(
                new ReadingSpacing(),
                good()
                    .reading(
                        r ->
                            r.block().equals("B2") && r.xMm().orElse(0) == 5
                                ? With.component(r, "xMm", some(2.3))
                                : r)))
        .containsExactly(
            "FAILED, stops release: Block B2: the nearest two of 12 readings are 0.3 mm "
                + "apart (run-1.csv, line 17 and run-1.csv, line 18), but 0.55 mm is asked: 3 "
                + "diagonals of 0.18 mm (default).");
  }

  @Test
  void asksForPlaces() {
    assertThat(
            objections(
                new ReadingSpacing(),
                good()
                    .reading(
                        r ->
                            r.block().equals("B2")
                                ? With.component(r, "xMm", OptionalDouble.empty())
                                : r)))
        .containsExactly(
            "DATA_MISSING, needs a written reason: Block B2: the places of its readings "
                + "are not recorded; give x_mm and y_mm in the readings table, or state in the "
                + "reason how the distance was kept.");
  }

  @Test
  void asksMoreDistanceOfLightMetals() {
    assertThat(
            objections(
                new ReadingSpacing(),
                good()
                    .block("B2", "elasticModulusGpa", some(70))
                    .reading(
                        r ->
                            r.block().equals("B2") && r.xMm().orElse(0) == 5
                                ? With.component(r, "xMm", some(2.8))
                                : r)))
        .containsExactly(
            "FAILED, stops release: Block B2: the nearest two of 12 readings are 0.8 mm "
                + "apart (run-1.csv, line 17 and run-1.csv, line 18), but 1.1 mm is asked: 6 "
                + "diagonals of 0.18 mm (default).");
  }

  @Test
  void judgesTheNumberOfReadings() {
    assertThat(
            objections(
                new ReadingsPerBlock(),
                good()
                    .readings(
                        r ->
                            !(r.block().equals("B5") && r.yMm().orElse(0) > 3
                                || r.block().equals("B6")
                                    && (r.yMm().orElse(0) > 3 || r.xMm().orElse(0) > 6)))))
        .containsExactly(
            "FAILED, needs a written reason: Block B5 has 3 kept readings in 1 run, "
                + "below the limit 5 (default).",
            "FAILED, stops release: Block B6 has 2 kept readings in 1 run, below the "
                + "limit 3 (default).");
  }

  @Test
  void refusesAnExclusionWithoutACause() {
    assertThat(
            objections(
                new ExclusionsJustified(),
                good()
                    .excluded("run-1.csv", 8, "Outlier")
                    .excluded("run-2.csv", 9, "probe slipped, seen at once")))
        .containsExactly(
            "FAILED, stops release: The reading in run-1.csv, line 8 on block B8 was "
                + "left out by B. Reader with the reason \"Outlier\", which names no cause.");
  }

  @Test
  void refusesAnExclusionOfNothing() {
    assertThat(
            objections(new ExclusionsJustified(), good().excluded("run-9.csv", 8, "probe slipped")))
        .containsExactly(
            "FAILED, stops release: The exclusion of run-9.csv, line 8 by B. Reader "
                + "meets no reading of this campaign; the file may have been changed since.");
  }

  @Test
  void asksWhyACellLostTwo() {
    assertThat(
            objections(
                new ExclusionsJustified(),
                good()
                    .excluded("run-1.csv", 8, "probe slipped")
                    .excluded("run-1.csv", 9, "probe slipped again")))
        .containsExactly(
            "FAILED, needs a written reason: 2 readings of block B8, run R1, operator "
                + "Operator 1 were left out, above the limit 1 (default).");
  }

  @Test
  void asksWhyMoreThanAFewWereLeftOut() {
    assertThat(
            objections(
                new ExclusionsJustified(),
                good()
                    .limited("exclusions-justified", 0.005)
                    .excluded("run-1.csv", 8, "probe slipped")))
        .containsExactly(
            "FAILED, needs a written reason: 1 of 156 readings were left out (0.641 %), "
                + "above the limit 0.5 % (QP-7:2026, table 2).");
  }

  @Test
  void judgesRepeatability() {
    assertThat(objections(new BlockRepeatability(), good().spread("B4", 4).spread("B2", 8)))
        .containsExactly(
            "FAILED, stops release: Block B2: single readings within a run scatter with "
                + "s = 13.2 % of the hardness, above the limit 5 % (default) and above twice "
                + "of it.",
            "FAILED, needs a written reason: Block B4: single readings within a run "
                + "scatter with s = 5.94 % of the hardness, above the limit 5 % (default).");
  }

  @Test
  void cannotJudgeOneReadingARun() {
    assertThat(
            objections(
                new BlockRepeatability(),
                good().readings(r -> !r.block().equals("B7") || r.xMm().orElse(0) == 2)))
        .containsExactly(
            "DATA_MISSING, needs a written reason: Block B7 was read once in every run, "
                + "which shows no repeatability; read it several times in a run.");
  }

  @Test
  void findsBlocksInTheWrongOrder() {
    assertThat(objections(new OrderOfBlocks(), good().swapped("B3", "B6")))
        .containsExactly(
            "FAILED, stops release: Block B6 (certified 294.8 HV10) and block B4 "
                + "(certified 322.7 HV10) respond in the wrong order, 1257.0 and 1363.8; they "
                + "are 68 HV10 or 22 standard uncertainties from agreement, above the limit 2 "
                + "(default); the two may be swapped.",
            "FAILED, stops release: Block B5 (certified 348.2 HV10) and block B3 "
                + "(certified 375.2 HV10) respond in the wrong order, 1312.8 and 1417.8; they "
                + "are 71 HV10 or 19 standard uncertainties from agreement, above the limit 2 "
                + "(default); the two may be swapped.");
  }

  @Test
  void asksWhyTwoAlikeBlocksStandInTheWrongOrder() {
    assertThat(
            objections(
                new OrderOfBlocks(),
                good()
                    .certificate("B4", "certified", 347.9)
                    .reading(
                        r ->
                            r.block().equals("B4")
                                ? With.component(r, "displayed", r.displayed() - 52.0)
                                : r)))
        .containsExactly(
            "FAILED, needs a written reason: Block B4 (certified 347.9 HV10) and block "
                + "B5 (certified 348.2 HV10) respond in the wrong order, 1311.8 and 1312.8; "
                + "they are 0.84 HV10 or 0.23 standard uncertainties from agreement, within "
                + "the limit 2 (default), but a curve needs an order.");
  }
}
