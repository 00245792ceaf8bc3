package fettle.acceptance;

import static fettle.acceptance.Answers.objections;
import static fettle.acceptance.SimulatedCampaign.good;
import static fettle.acceptance.SimulatedCampaign.some;

import fettle.quantity.ResponseKind;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Instrument, session and readings: every check fails where it should, in these words. */
class SessionChecksTest {
  @Test
  void namesTheRunThatBeginsOnTheAlloy() {
    for (String s :
        objections(
            new StandardBlockBefore(),
            good()
                .readings(
                    r ->
                        !(r.block().equals("S1")
                            && r.file().equals("run-2.csv")
                            && r.line() < 10))))
      System.out.println("@@namesTheRunThatBeginsOnTheAlloy\t" + s);
    System.out.println("@@namesTheRunThatBeginsOnTheAlloy\tEND");
  }

  @Test
  void namesTheRunWithoutAStandardBlock() {
    for (String s :
        objections(
            new StandardBlockBefore(),
            good().readings(r -> !(r.block().equals("S1") && r.file().equals("run-2.csv")))))
      System.out.println("@@namesTheRunWithoutAStandardBlock\t" + s);
    System.out.println("@@namesTheRunWithoutAStandardBlock\tEND");
  }

  @Test
  void asksForAStandardBlock() {
    for (String s : objections(new StandardBlockBefore(), good().without("S1")))
      System.out.println("@@asksForAStandardBlock\t" + s);
    System.out.println("@@asksForAStandardBlock\tEND");
  }

  @Test
  void refusesARunInWhichTheProbeMoved() {
    for (String s :
        objections(
            new StandardBlockChange(),
            good()
                .reading(
                    r ->
                        r.block().equals("S1") && r.file().equals("run-3.csv") && r.line() > 10
                            ? With.component(r, "displayed", r.displayed() + 60)
                            : r))) System.out.println("@@refusesARunInWhichTheProbeMoved\t" + s);
    System.out.println("@@refusesARunInWhichTheProbeMoved\tEND");
  }

  @Test
  void asksForTheStandardBlockAtTheEnd() {
    for (String s :
        objections(
            new StandardBlockChange(),
            good()
                .readings(
                    r ->
                        !(r.block().equals("S1")
                            && r.file().equals("run-2.csv")
                            && r.line() > 10))))
      System.out.println("@@asksForTheStandardBlockAtTheEnd\t" + s);
    System.out.println("@@asksForTheStandardBlockAtTheEnd\tEND");
  }

  @Test
  void seesAWanderingRod() {
    for (String s :
        objections(
            new FreeFrequency(),
            good()
                .reading(
                    r ->
                        r.file().equals("run-1.csv") && r.line() > 20
                            ? With.component(
                                r, "freeFrequencyHz", some(r.freeFrequencyHz().orElseThrow() + 37))
                            : r))) System.out.println("@@seesAWanderingRod\t" + s);
    System.out.println("@@seesAWanderingRod\tEND");
  }

  @Test
  void acceptsARodThatFollowsTheTemperature() {
    for (String s :
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
      System.out.println("@@acceptsARodThatFollowsTheTemperature\t" + s);
    System.out.println("@@acceptsARodThatFollowsTheTemperature\tEND");
  }

  @Test
  void asksForTheFreeFrequency() {
    for (String s :
        objections(
            new FreeFrequency(),
            good()
                .reading(
                    r ->
                        r.line() == 12
                            ? With.component(r, "freeFrequencyHz", OptionalDouble.empty())
                            : r))) System.out.println("@@asksForTheFreeFrequency\t" + s);
    System.out.println("@@asksForTheFreeFrequency\tEND");
  }

  @Test
  void findsTheFileInWhichASteelConversionWasLeftOn() {
    for (String s :
        objections(
            new RawResponse(),
            good()
                .reading(
                    r ->
                        r.file().equals("run-2.csv") && !r.block().equals("S1")
                            ? With.component(
                                r, "displayed", 2.7 * 250 * Math.pow(1552 / r.displayed(), 2.05))
                            : r)))
      System.out.println("@@findsTheFileInWhichASteelConversionWasLeftOn\t" + s);
    System.out.println("@@findsTheFileInWhichASteelConversionWasLeftOn\tEND");
  }

  @Test
  void findsAQuantityThatRisesWithHardness() {
    for (String s :
        objections(
            new RawResponse(),
            good()
                .reading(
                    r ->
                        r.file().equals("run-2.csv") && !r.block().equals("S1")
                            ? With.component(r, "displayed", 1e6 / r.displayed())
                            : r)))
      System.out.println("@@findsAQuantityThatRisesWithHardness\t" + s);
    System.out.println("@@findsAQuantityThatRisesWithHardness\tEND");
  }

  @Test
  void cannotTellFromTwoBlocks() {
    for (String s :
        objections(
            new RawResponse(),
            good().reading(r -> r.block().equals("B1") ? With.component(r, "file", "odd.csv") : r)))
      System.out.println("@@cannotTellFromTwoBlocks\t" + s);
    System.out.println("@@cannotTellFromTwoBlocks\tEND");
  }

  @Test
  void asksForTheBaseSetting() {
    for (String s :
        objections(
            new RawResponse(), good().identified("responseKind", ResponseKind.INDICATED_HARDNESS)))
      System.out.println("@@asksForTheBaseSetting\t" + s);
    System.out.println("@@asksForTheBaseSetting\tEND");
  }

  @Test
  void refusesTwoBaseSettings() {
    for (String s :
        objections(
            new RawResponse(),
            good()
                .identified("responseKind", ResponseKind.INDICATED_HARDNESS)
                .reading(
                    r ->
                        With.component(
                            r,
                            "note",
                            Optional.of("base setting: " + (r.line() < 30 ? "steel" : "copper"))))))
      System.out.println("@@refusesTwoBaseSettings\t" + s);
    System.out.println("@@refusesTwoBaseSettings\tEND");
  }

  @Test
  void acceptsOneBaseSetting() {
    for (String s :
        objections(
            new RawResponse(),
            good()
                .identified("responseKind", ResponseKind.INDICATED_HARDNESS)
                .reading("note", Optional.of("base setting: steel"))))
      System.out.println("@@acceptsOneBaseSetting\t" + s);
    System.out.println("@@acceptsOneBaseSetting\tEND");
  }

  @Test
  void countsTheReadingsOfAnotherProbe() {
    for (String s :
        objections(
            new OneProbe(),
            good()
                .reading(
                    r ->
                        r.file().equals("run-4.csv")
                            ? With.component(r, "probe", Optional.of("P-50"))
                            : r))) System.out.println("@@countsTheReadingsOfAnotherProbe\t" + s);
    System.out.println("@@countsTheReadingsOfAnotherProbe\tEND");
  }

  @Test
  void asksForTheProbeOfTheDossier() {
    for (String s : objections(new OneProbe(), good().identified("probe", Optional.empty())))
      System.out.println("@@asksForTheProbeOfTheDossier\t" + s);
    System.out.println("@@asksForTheProbeOfTheDossier\tEND");
  }

  @Test
  void asksForTheProbeOfTheReadings() {
    for (String s :
        objections(
            new OneProbe(),
            good().reading(r -> r.line() < 10 ? With.component(r, "probe", Optional.empty()) : r)))
      System.out.println("@@asksForTheProbeOfTheReadings\t" + s);
    System.out.println("@@asksForTheProbeOfTheReadings\tEND");
  }

  @Test
  void findsReadingsTooCloseTogether() {
    for (String s :
        objections(
            new ReadingSpacing(),
            good()
                .reading(
                    r ->
                        r.block().equals("B2") && r.xMm().orElse(0) == 5
                            ? With.component(r, "xMm", some(2.3))
                            : r))) System.out.println("@@findsReadingsTooCloseTogether\t" + s);
    System.out.println("@@findsReadingsTooCloseTogether\tEND");
  }

  @Test
  void asksForPlaces() {
    for (String s :
        objections(
            new ReadingSpacing(),
            good()
                .reading(
                    r ->
                        r.block().equals("B2")
                            ? With.component(r, "xMm", OptionalDouble.empty())
                            : r))) System.out.println("@@asksForPlaces\t" + s);
    System.out.println("@@asksForPlaces\tEND");
  }

  @Test
  void asksMoreDistanceOfLightMetals() {
    for (String s :
        objections(
            new ReadingSpacing(),
            good()
                .block("B2", "elasticModulusGpa", some(70))
                .reading(
                    r ->
                        r.block().equals("B2") && r.xMm().orElse(0) == 5
                            ? With.component(r, "xMm", some(2.8))
                            : r))) System.out.println("@@asksMoreDistanceOfLightMetals\t" + s);
    System.out.println("@@asksMoreDistanceOfLightMetals\tEND");
  }

  @Test
  void judgesTheNumberOfReadings() {
    for (String s :
        objections(
            new ReadingsPerBlock(),
            good()
                .readings(
                    r ->
                        !(r.block().equals("B5") && r.yMm().orElse(0) > 3
                            || r.block().equals("B6")
                                && (r.yMm().orElse(0) > 3 || r.xMm().orElse(0) > 6)))))
      System.out.println("@@judgesTheNumberOfReadings\t" + s);
    System.out.println("@@judgesTheNumberOfReadings\tEND");
  }

  @Test
  void refusesAnExclusionWithoutACause() {
    for (String s :
        objections(
            new ExclusionsJustified(),
            good()
                .excluded("run-1.csv", 8, "Outlier")
                .excluded("run-2.csv", 9, "probe slipped, seen at once")))
      System.out.println("@@refusesAnExclusionWithoutACause\t" + s);
    System.out.println("@@refusesAnExclusionWithoutACause\tEND");
  }

  @Test
  void refusesAnExclusionOfNothing() {
    for (String s :
        objections(new ExclusionsJustified(), good().excluded("run-9.csv", 8, "probe slipped")))
      System.out.println("@@refusesAnExclusionOfNothing\t" + s);
    System.out.println("@@refusesAnExclusionOfNothing\tEND");
  }

  @Test
  void asksWhyACellLostTwo() {
    for (String s :
        objections(
            new ExclusionsJustified(),
            good()
                .excluded("run-1.csv", 8, "probe slipped")
                .excluded("run-1.csv", 9, "probe slipped again")))
      System.out.println("@@asksWhyACellLostTwo\t" + s);
    System.out.println("@@asksWhyACellLostTwo\tEND");
  }

  @Test
  void asksWhyMoreThanAFewWereLeftOut() {
    for (String s :
        objections(
            new ExclusionsJustified(),
            good()
                .limited("exclusions-justified", 0.005)
                .excluded("run-1.csv", 8, "probe slipped")))
      System.out.println("@@asksWhyMoreThanAFewWereLeftOut\t" + s);
    System.out.println("@@asksWhyMoreThanAFewWereLeftOut\tEND");
  }

  @Test
  void judgesRepeatability() {
    for (String s : objections(new BlockRepeatability(), good().spread("B4", 4).spread("B2", 8)))
      System.out.println("@@judgesRepeatability\t" + s);
    System.out.println("@@judgesRepeatability\tEND");
  }

  @Test
  void cannotJudgeOneReadingARun() {
    for (String s :
        objections(
            new BlockRepeatability(),
            good().readings(r -> !r.block().equals("B7") || r.xMm().orElse(0) == 2)))
      System.out.println("@@cannotJudgeOneReadingARun\t" + s);
    System.out.println("@@cannotJudgeOneReadingARun\tEND");
  }

  @Test
  void findsBlocksInTheWrongOrder() {
    for (String s : objections(new OrderOfBlocks(), good().swapped("B3", "B6")))
      System.out.println("@@findsBlocksInTheWrongOrder\t" + s);
    System.out.println("@@findsBlocksInTheWrongOrder\tEND");
  }

  @Test
  void asksWhyTwoAlikeBlocksStandInTheWrongOrder() {
    for (String s :
        objections(
            new OrderOfBlocks(),
            good()
                .certificate("B4", "certified", 347.9)
                .reading(
                    r ->
                        r.block().equals("B4")
                            ? With.component(r, "displayed", r.displayed() - 49.0)
                            : r)))
      System.out.println("@@asksWhyTwoAlikeBlocksStandInTheWrongOrder\t" + s);
    System.out.println("@@asksWhyTwoAlikeBlocksStandInTheWrongOrder\tEND");
  }
}
