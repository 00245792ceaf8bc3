package fettle.acceptance;

import static fettle.acceptance.Answers.altered;
import static fettle.acceptance.Answers.objections;
import static fettle.acceptance.SimulatedCampaign.good;
import static fettle.acceptance.SimulatedCampaign.unsettled;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Fit: every check fails where it should, in these words. */
class FitChecksTest {
  @Test
  void refusesTooFewBlocks() {
    for (String s :
        objections(new EnoughBlocks(), good().without("B2", "B4", "B5", "B7").choosing("power")))
      System.out.println("@@refusesTooFewBlocks\t" + s);
    System.out.println("@@refusesTooFewBlocks\tEND");
  }

  @Test
  void asksForACurve() {
    for (String s : objections(new EnoughBlocks(), unsettled()))
      System.out.println("@@asksForACurve\t" + s);
    System.out.println("@@asksForACurve\tEND");
  }

  @Test
  void judgesTheConditionNumber() {
    for (String s : objections(new FitConditioning(), good().limited("fit-conditioning", 1.2)))
      System.out.println("@@judgesTheConditionNumber\t" + s);
    System.out.println("@@judgesTheConditionNumber\tEND");
  }

  @Test
  void notesALargeConditionNumber() {
    for (String s : objections(new FitConditioning(), good().limited("fit-conditioning-note", 1.2)))
      System.out.println("@@notesALargeConditionNumber\t" + s);
    System.out.println("@@notesALargeConditionNumber\tEND");
  }

  @Test
  void namesTwoBlocksThatMayBeSwapped() {
    for (String s : objections(new BetweenBlockLimit(), good().swapped("B3", "B6")))
      System.out.println("@@namesTwoBlocksThatMayBeSwapped\t" + s);
    System.out.println("@@namesTwoBlocksThatMayBeSwapped\tEND");
  }

  @Test
  void judgesScatterThatNoExchangeExplains() {
    for (String s : objections(new BetweenBlockLimit(), unsettled()))
      System.out.println("@@judgesScatterThatNoExchangeExplains\t" + s);
    System.out.println("@@judgesScatterThatNoExchangeExplains\tEND");
  }

  @Test
  void asksWhyTheScatterExceedsTheLimitOfThePolicy() {
    for (String s :
        objections(new BetweenBlockLimit(), good().limited("between-block-scatter", 0.001)))
      System.out.println("@@asksWhyTheScatterExceedsTheLimitOfThePolicy\t" + s);
    System.out.println("@@asksWhyTheScatterExceedsTheLimitOfThePolicy\tEND");
  }

  @Test
  void cannotJudgeScatterWithoutAFit() {
    for (String s :
        objections(new BetweenBlockLimit(), good().without("B2", "B4", "B5", "B7", "B8")))
      System.out.println("@@cannotJudgeScatterWithoutAFit\t" + s);
    System.out.println("@@cannotJudgeScatterWithoutAFit\tEND");
  }

  @Test
  void namesABlockOffTheCurve() {
    for (String s : objections(new BlockResidual(), good().certifiedWrongly("B4", 1.06)))
      System.out.println("@@namesABlockOffTheCurve\t" + s);
    System.out.println("@@namesABlockOffTheCurve\tEND");
  }

  @Test
  void cannotJudgeResidualsWithoutAFit() {
    for (String s : objections(new BlockResidual(), good().without("B2", "B4", "B5", "B7", "B8")))
      System.out.println("@@cannotJudgeResidualsWithoutAFit\t" + s);
    System.out.println("@@cannotJudgeResidualsWithoutAFit\tEND");
  }

  @Test
  void pointsToTheCertifiedValue() {
    for (String s : objections(new BlockPredictedByOthers(), good().certifiedWrongly("B4", 1.06)))
      System.out.println("@@pointsToTheCertifiedValue\t" + s);
    System.out.println("@@pointsToTheCertifiedValue\tEND");
  }

  @Test
  void stopsAtAGrossError() {
    for (String s : objections(new BlockPredictedByOthers(), good().certifiedWrongly("B4", 1.15)))
      System.out.println("@@stopsAtAGrossError\t" + s);
    System.out.println("@@stopsAtAGrossError\tEND");
  }

  @Test
  void pointsToASwap() {
    for (String s : objections(new BlockPredictedByOthers(), good().swapped("B4", "B5")))
      System.out.println("@@pointsToASwap\t" + s);
    System.out.println("@@pointsToASwap\tEND");
  }

  @Test
  void pointsToTheReadings() {
    for (String s :
        objections(
            new BlockPredictedByOthers(), good().spread("B4", 5).certifiedWrongly("B4", 1.10)))
      System.out.println("@@pointsToTheReadings\t" + s);
    System.out.println("@@pointsToTheReadings\tEND");
  }

  @Test
  void cannotPredictWithoutAFit() {
    for (String s :
        objections(new BlockPredictedByOthers(), good().without("B2", "B4", "B5", "B7", "B8")))
      System.out.println("@@cannotPredictWithoutAFit\t" + s);
    System.out.println("@@cannotPredictWithoutAFit\tEND");
  }

  @Test
  void judgesTheLeaveOneOutRatio() {
    for (String s : objections(new LeaveOneOutRatio(), good().limited("leave-one-out-ratio", 1.1)))
      System.out.println("@@judgesTheLeaveOneOutRatio\t" + s);
    System.out.println("@@judgesTheLeaveOneOutRatio\tEND");
  }

  @Test
  void stopsAtAModelThatFollowsItsBlocks() {
    for (String s :
        objections(new LeaveOneOutRatio(), good().without("B2", "B4").choosing("polynomial-3")))
      System.out.println("@@stopsAtAModelThatFollowsItsBlocks\t" + s);
    System.out.println("@@stopsAtAModelThatFollowsItsBlocks\tEND");
  }

  @Test
  void judgesTheShareOfMonotoneCurves() {
    for (String s :
        objections(
            new MonotoneRange(), altered(chosen -> With.component(chosen, "monotoneShare", 0.987))))
      System.out.println("@@judgesTheShareOfMonotoneCurves\t" + s);
    System.out.println("@@judgesTheShareOfMonotoneCurves\tEND");
  }

  @Test
  void asksWhyTheExponentIsLow() {
    for (String s : objections(new ResponseExponent(), good().exponent(1.65)))
      System.out.println("@@asksWhyTheExponentIsLow\t" + s);
    System.out.println("@@asksWhyTheExponentIsLow\tEND");
  }

  @Test
  void stopsAtAnExponentOfAnotherQuantity() {
    for (String s : objections(new ResponseExponent(), good().exponent(1.3)))
      System.out.println("@@stopsAtAnExponentOfAnotherQuantity\t" + s);
    System.out.println("@@stopsAtAnExponentOfAnotherQuantity\tEND");
  }

  @Test
  void stopsAtASteepExponent() {
    for (String s : objections(new ResponseExponent(), good().exponent(3.3)))
      System.out.println("@@stopsAtASteepExponent\t" + s);
    System.out.println("@@stopsAtASteepExponent\tEND");
  }

  @Test
  void missesASharedSource() {
    for (String s :
        objections(
            new SharedSourceInCurve(),
            altered(
                chosen ->
                    With.component(
                        chosen,
                        "curve",
                        With.component(chosen.curve(), "sharedSources", List.of())))))
      System.out.println("@@missesASharedSource\t" + s);
    System.out.println("@@missesASharedSource\tEND");
  }

  @Test
  void asksForASharedSource() {
    for (String s :
        objections(
            new SharedSourceInCurve(),
            good().certificate("*", "sharedUncertainty", OptionalDouble.empty())))
      System.out.println("@@asksForASharedSource\t" + s);
    System.out.println("@@asksForASharedSource\tEND");
  }

  @Test
  void findsACurveThatDoesNotFollowFromItsData() {
    for (String s :
        objections(
            new Recomputation(),
            altered(
                chosen ->
                    With.component(
                        chosen,
                        "curve",
                        With.component(
                            chosen.curve(),
                            "beta",
                            new double[] {
                              1.0001 * chosen.curve().beta()[0], chosen.curve().beta()[1]
                            })))))
      System.out.println("@@findsACurveThatDoesNotFollowFromItsData\t" + s);
    System.out.println("@@findsACurveThatDoesNotFollowFromItsData\tEND");
  }
}
