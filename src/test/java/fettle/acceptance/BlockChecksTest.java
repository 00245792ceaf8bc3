package fettle.acceptance;

import static fettle.acceptance.Answers.objections;
import static fettle.acceptance.SimulatedCampaign.good;
import static fettle.acceptance.SimulatedCampaign.some;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Certificates and blocks: every check fails where it should, in these words. */
class BlockChecksTest {
  @Test
  void namesTheReadingTakenAfterTheEndOfValidity() {
    assertThat(
            objections(
                new CertificateValid(),
                good().certificate("B3", "validUntil", Optional.of(LocalDate.of(2026, 3, 3)))))
        .containsExactly(
            "FAILED, stops release: Block B3, certificate Z-103: validity ended on "
                + "2026-03-03, but the reading in run-3.csv, line 8 is of 2026-03-04.");
  }

  @Test
  void takesTheDayOfAssessmentWhereNoTimeWasRecorded() {
    assertThat(
            objections(
                new CertificateValid(),
                good()
                    .certificate("B3", "validUntil", Optional.of(LocalDate.of(2026, 3, 20)))
                    .reading("takenAt", Optional.empty())))
        .containsExactly(
            "FAILED, stops release: Block B3, certificate Z-103: validity ended on "
                + "2026-03-20, but the reading in run-1.csv, line 29 is of 2026-04-01 (day of "
                + "assessment, no time given).");
  }

  @Test
  void asksForTheEndOfValidity() {
    assertThat(
            objections(
                new CertificateValid(), good().certificate("C2", "validUntil", Optional.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: Block C2, certificate Z-110: no end of "
                + "validity is stated; give it as valid_until in the blocks table.");
  }

  @Test
  void refusesACertificateFromTheFuture() {
    assertThat(
            objections(
                new CertificateChain(),
                good().certificate("B1", "certifiedOn", Optional.of(LocalDate.of(2026, 5, 3)))))
        .containsExactly(
            "FAILED, stops release: Block B1: certificate Z-101 is dated 2026-05-03, "
                + "after the day of assessment 2026-04-01.");
  }

  @Test
  void asksForTheLinksOfTheChain() {
    assertThat(
            objections(
                new CertificateChain(),
                good()
                    .certificate("B1", "number", Optional.empty())
                    .certificate("B1", "certifiedBy", Optional.empty())
                    .certificate("B2", "certifiedOn", Optional.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: Block B1: its certificate does not state "
                + "certificate, certified_by; fill these columns of the blocks table.",
            "DATA_MISSING, stops release: Block B2: its certificate does not state "
                + "certified_on; fill these columns of the blocks table.");
  }

  @Test
  void refusesACoverageFactorBelowOne() {
    assertThat(
            objections(
                new CertificateUncertainty(), good().certificate("B5", "coverageFactor", 0.5)))
        .containsExactly(
            "FAILED, stops release: Block B5 (certified 348.2 HV10) has U = 7.0 HV10 "
                + "(2.0 %) with k = 0.5, below the limit 1 (default).");
  }

  @Test
  void refusesACoverageFactorNoDistributionHas() {
    assertThat(
            objections(
                new CertificateUncertainty(),
                good()
                    .certificate("B5", "coverageFactor", 6.0)
                    .certificate("B5", "expandedUncertainty", 21.0)))
        .containsExactly(
            "FAILED, stops release: Block B5 (certified 348.2 HV10) has U = 21 HV10 (6.0 "
                + "%) with k = 6, above the limit 4.5 (default).");
  }

  @Test
  void refusesFewIndentationsAndNotesMoreThanEnough() {
    assertThat(
            objections(
                new CertifiedIndentations(),
                good()
                    .certificate("B2", "indentations", OptionalInt.of(3))
                    .certificate("B4", "indentations", OptionalInt.of(6))
                    .certificate("B6", "indentations", OptionalInt.empty())))
        .containsExactly(
            "FAILED, stops release: Block B2 is certified on 3 indentations, fewer than "
                + "the limit 5 (default).",
            "FAILED, note: Block B4 is certified on 6 indentations, which meets the "
                + "minimum; more are advised, limit 10 (default).",
            "DATA_MISSING, stops release: Block B6: the number of certified indentations "
                + "is not stated; fill the column indentations of the blocks table.");
  }

  @Test
  void refusesAMachineWithoutError() {
    assertThat(
            objections(
                new SharedSourceDeclared(), good().certificate("B2", "sharedUncertainty", some(0))))
        .containsExactly(
            "FAILED, stops release: 11 blocks were certified on machine Bench 1, but "
                + "u_shared is stated as 0 for B2; a machine without any error of its own does "
                + "not exist.");
  }

  @Test
  void asksWhatBlocksOfOneMachineShare() {
    assertThat(
            objections(
                new SharedSourceDeclared(),
                good()
                    .certificate("B2", "sharedUncertainty", OptionalDouble.empty())
                    .certificate("C1", "sharedUncertainty", OptionalDouble.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: 11 blocks were certified on machine Bench 1, "
                + "but C1, B2 state no u_shared; give the machine's part of the standard "
                + "uncertainty in the column u_shared.");
  }

  @Test
  void asksForTheMachine() {
    assertThat(
            objections(
                new SharedSourceDeclared(),
                good().certificate("B2", "referenceMachine", Optional.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: Block B2: its reference machine is not stated, "
                + "so it cannot be known what it shares with others; fill the columns "
                + "reference_machine and u_shared.");
  }

  @Test
  void refusesABlockOfAnotherMaterial() {
    assertThat(
            objections(
                new BlockMaterial(),
                good()
                    .block("C2", "material", Optional.of("nickel alloy"))
                    .block("B1", "material", Optional.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: Block B1: its material is not stated; fill the "
                + "column material of the blocks table.",
            "FAILED, stops release: Block C2 is of \"nickel alloy\", but the curve is for "
                + "\"Titanium alpha-beta\".");
  }

  @Test
  void judgesThickness() {
    assertThat(
            objections(
                new BlockThickness(),
                good()
                    .block("B1", "thicknessMm", some(4))
                    .block("B2", "thicknessMm", some(2))
                    .block("B3", "thicknessMm", OptionalDouble.empty())))
        .containsExactly(
            "FAILED, needs a written reason: Block B1 has thickness 4 mm, below the "
                + "limit 5 mm (default).",
            "FAILED, stops release: Block B2 has thickness 2 mm, below the limit 5 mm "
                + "(default) and below half of it.",
            "DATA_MISSING, needs a written reason: Block B3: its thickness is not "
                + "stated; fill the column thickness_mm of the blocks table.");
  }

  @Test
  void citesThePolicyWhoseLimitIsInForce() {
    assertThat(
            objections(
                new BlockThickness(),
                good().limited("block-thickness", 15).block("B1", "thicknessMm", some(12))))
        .containsExactly(
            "FAILED, needs a written reason: Block B1 has thickness 12 mm, below the "
                + "limit 15 mm (QP-7:2026, table 2).");
  }

  @Test
  void judgesMass() {
    assertThat(
            objections(
                new BlockMass(),
                good()
                    .block("B1", "massKg", some(0.2))
                    .block("B2", "massKg", some(0.1))
                    .block("B3", "massKg", OptionalDouble.empty())))
        .containsExactly(
            "FAILED, needs a written reason: Block B1 has mass 0.2 kg, below the limit "
                + "0.3 kg (default).",
            "FAILED, stops release: Block B2 has mass 0.1 kg, below the limit 0.3 kg "
                + "(default) and below half of it.",
            "DATA_MISSING, needs a written reason: Block B3: its mass is not stated; "
                + "fill the column mass_kg of the blocks table.");
  }

  @Test
  void judgesRoughness() {
    assertThat(
            objections(
                new BlockRoughness(),
                good()
                    .block("B1", "roughnessRaUm", some(0.6))
                    .block("B2", "roughnessRaUm", some(1))
                    .block("B3", "roughnessRaUm", OptionalDouble.empty())))
        .containsExactly(
            "FAILED, needs a written reason: Block B1 has roughness Ra 0.6 µm, above the "
                + "limit 0.4 µm (default).",
            "FAILED, stops release: Block B2 has roughness Ra 1 µm, above the limit 0.4 "
                + "µm (default) and above twice of it.",
            "DATA_MISSING, needs a written reason: Block B3: its roughness Ra is not "
                + "stated; fill the column roughness_ra_um of the blocks table.");
  }

  @Test
  void findsOnePieceUnderTwoMarks() {
    assertThat(
            objections(
                new FitAndCheckDisjoint(),
                good()
                    .swapped("C1", "C1")
                    .certificate("C1", c -> good().blocks().get(1).certificates().get(0))))
        .containsExactly(
            "FAILED, stops release: Check block C1 and fitting block B2 carry the same "
                + "certificate Z-102 with the same value 276.5 HV10; they look like one piece "
                + "under two marks.");
  }

  @Test
  void cannotTellPiecesApartWithoutNumbers() {
    assertThat(
            objections(
                new FitAndCheckDisjoint(), good().certificate("C1", "number", Optional.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: Check block C1: without a certificate number "
                + "it cannot be told from the fitting blocks; fill the column certificate of "
                + "the blocks table.");
  }

  @Test
  void asksForCheckBlocks() {
    assertThat(objections(new FitAndCheckDisjoint(), good().without("C1", "C2", "C3")))
        .containsExactly(
            "DATA_MISSING, stops release: No check block was read; give a block the role "
                + "check and read it like the others.");
  }
}
