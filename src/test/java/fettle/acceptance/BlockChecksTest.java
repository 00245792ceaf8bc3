package fettle.acceptance;

import static fettle.acceptance.Answers.objections;
import static fettle.acceptance.SimulatedCampaign.good;
import static fettle.acceptance.SimulatedCampaign.some;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Certificates and blocks: every check fails where it should, in these words. */
class BlockChecksTest {
  @Test
  void namesTheReadingTakenAfterTheEndOfValidity() {
    for (String s :
        objections(
            new CertificateValid(),
            good().certificate("B3", "validUntil", Optional.of(LocalDate.of(2026, 3, 3)))))
      System.out.println("@@namesTheReadingTakenAfterTheEndOfValidity\t" + s);
    System.out.println("@@namesTheReadingTakenAfterTheEndOfValidity\tEND");
  }

  @Test
  void takesTheDayOfAssessmentWhereNoTimeWasRecorded() {
    for (String s :
        objections(
            new CertificateValid(),
            good()
                .certificate("B3", "validUntil", Optional.of(LocalDate.of(2026, 3, 20)))
                .reading("takenAt", Optional.empty())))
      System.out.println("@@takesTheDayOfAssessmentWhereNoTimeWasRecorded\t" + s);
    System.out.println("@@takesTheDayOfAssessmentWhereNoTimeWasRecorded\tEND");
  }

  @Test
  void asksForTheEndOfValidity() {
    for (String s :
        objections(
            new CertificateValid(), good().certificate("C2", "validUntil", Optional.empty())))
      System.out.println("@@asksForTheEndOfValidity\t" + s);
    System.out.println("@@asksForTheEndOfValidity\tEND");
  }

  @Test
  void refusesACertificateFromTheFuture() {
    for (String s :
        objections(
            new CertificateChain(),
            good().certificate("B1", "certifiedOn", Optional.of(LocalDate.of(2026, 5, 3)))))
      System.out.println("@@refusesACertificateFromTheFuture\t" + s);
    System.out.println("@@refusesACertificateFromTheFuture\tEND");
  }

  @Test
  void asksForTheLinksOfTheChain() {
    for (String s :
        objections(
            new CertificateChain(),
            good()
                .certificate("B1", "number", Optional.empty())
                .certificate("B1", "certifiedBy", Optional.empty())
                .certificate("B2", "certifiedOn", Optional.empty())))
      System.out.println("@@asksForTheLinksOfTheChain\t" + s);
    System.out.println("@@asksForTheLinksOfTheChain\tEND");
  }

  @Test
  void refusesACoverageFactorBelowOne() {
    for (String s :
        objections(new CertificateUncertainty(), good().certificate("B5", "coverageFactor", 0.5)))
      System.out.println("@@refusesACoverageFactorBelowOne\t" + s);
    System.out.println("@@refusesACoverageFactorBelowOne\tEND");
  }

  @Test
  void refusesACoverageFactorNoDistributionHas() {
    for (String s :
        objections(
            new CertificateUncertainty(),
            good()
                .certificate("B5", "coverageFactor", 6.0)
                .certificate("B5", "expandedUncertainty", 21.0)))
      System.out.println("@@refusesACoverageFactorNoDistributionHas\t" + s);
    System.out.println("@@refusesACoverageFactorNoDistributionHas\tEND");
  }

  @Test
  void refusesFewIndentationsAndNotesMoreThanEnough() {
    for (String s :
        objections(
            new CertifiedIndentations(),
            good()
                .certificate("B2", "indentations", OptionalInt.of(3))
                .certificate("B4", "indentations", OptionalInt.of(6))
                .certificate("B6", "indentations", OptionalInt.empty())))
      System.out.println("@@refusesFewIndentationsAndNotesMoreThanEnough\t" + s);
    System.out.println("@@refusesFewIndentationsAndNotesMoreThanEnough\tEND");
  }

  @Test
  void refusesAMachineWithoutError() {
    for (String s :
        objections(
            new SharedSourceDeclared(), good().certificate("B2", "sharedUncertainty", some(0))))
      System.out.println("@@refusesAMachineWithoutError\t" + s);
    System.out.println("@@refusesAMachineWithoutError\tEND");
  }

  @Test
  void asksWhatBlocksOfOneMachineShare() {
    for (String s :
        objections(
            new SharedSourceDeclared(),
            good()
                .certificate("B2", "sharedUncertainty", OptionalDouble.empty())
                .certificate("C1", "sharedUncertainty", OptionalDouble.empty())))
      System.out.println("@@asksWhatBlocksOfOneMachineShare\t" + s);
    System.out.println("@@asksWhatBlocksOfOneMachineShare\tEND");
  }

  @Test
  void asksForTheMachine() {
    for (String s :
        objections(
            new SharedSourceDeclared(),
            good().certificate("B2", "referenceMachine", Optional.empty())))
      System.out.println("@@asksForTheMachine\t" + s);
    System.out.println("@@asksForTheMachine\tEND");
  }

  @Test
  void refusesABlockOfAnotherMaterial() {
    for (String s :
        objections(
            new BlockMaterial(),
            good()
                .block("C2", "material", Optional.of("nickel alloy"))
                .block("B1", "material", Optional.empty())))
      System.out.println("@@refusesABlockOfAnotherMaterial\t" + s);
    System.out.println("@@refusesABlockOfAnotherMaterial\tEND");
  }

  @Test
  void judgesThickness() {
    for (String s :
        objections(
            new BlockThickness(),
            good()
                .block("B1", "thicknessMm", some(4))
                .block("B2", "thicknessMm", some(2))
                .block("B3", "thicknessMm", OptionalDouble.empty())))
      System.out.println("@@judgesThickness\t" + s);
    System.out.println("@@judgesThickness\tEND");
  }

  @Test
  void citesThePolicyWhoseLimitIsInForce() {
    for (String s :
        objections(
            new BlockThickness(),
            good().limited("block-thickness", 15).block("B1", "thicknessMm", some(12))))
      System.out.println("@@citesThePolicyWhoseLimitIsInForce\t" + s);
    System.out.println("@@citesThePolicyWhoseLimitIsInForce\tEND");
  }

  @Test
  void judgesMass() {
    for (String s :
        objections(
            new BlockMass(),
            good()
                .block("B1", "massKg", some(0.2))
                .block("B2", "massKg", some(0.1))
                .block("B3", "massKg", OptionalDouble.empty())))
      System.out.println("@@judgesMass\t" + s);
    System.out.println("@@judgesMass\tEND");
  }

  @Test
  void judgesRoughness() {
    for (String s :
        objections(
            new BlockRoughness(),
            good()
                .block("B1", "roughnessRaUm", some(0.6))
                .block("B2", "roughnessRaUm", some(1))
                .block("B3", "roughnessRaUm", OptionalDouble.empty())))
      System.out.println("@@judgesRoughness\t" + s);
    System.out.println("@@judgesRoughness\tEND");
  }

  @Test
  void findsOnePieceUnderTwoMarks() {
    for (String s :
        objections(
            new FitAndCheckDisjoint(),
            good()
                .swapped("C1", "C1")
                .certificate("C1", c -> good().blocks().get(1).certificates().get(0))))
      System.out.println("@@findsOnePieceUnderTwoMarks\t" + s);
    System.out.println("@@findsOnePieceUnderTwoMarks\tEND");
  }

  @Test
  void cannotTellPiecesApartWithoutNumbers() {
    for (String s :
        objections(new FitAndCheckDisjoint(), good().certificate("C1", "number", Optional.empty())))
      System.out.println("@@cannotTellPiecesApartWithoutNumbers\t" + s);
    System.out.println("@@cannotTellPiecesApartWithoutNumbers\tEND");
  }

  @Test
  void asksForCheckBlocks() {
    for (String s : objections(new FitAndCheckDisjoint(), good().without("C1", "C2", "C3")))
      System.out.println("@@asksForCheckBlocks\t" + s);
    System.out.println("@@asksForCheckBlocks\tEND");
  }
}
