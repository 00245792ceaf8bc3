package fettle.acceptance;

import static fettle.acceptance.Answers.altered;
import static fettle.acceptance.Answers.objections;
import static fettle.acceptance.SimulatedCampaign.good;

import fettle.curve.ValidRange;
import fettle.policy.DecisionRule;
import fettle.policy.ErrorLimits;
import fettle.policy.Policy;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Check blocks, range, conditions, policy: every check fails where it should, in these words. */
class ValidationChecksTest {
  @Test
  void countsCheckBlocks() {
    for (String s : objections(new ValidationBlocks(), good().without("C1", "C2")))
      System.out.println("@@countsCheckBlocks\t" + s);
    System.out.println("@@countsCheckBlocks\tEND");
  }

  @Test
  void wantsCheckBlocksInTheOuterThirds() {
    for (String s : objections(new ValidationBlocks(), good().without("C3")))
      System.out.println("@@wantsCheckBlocksInTheOuterThirds\t" + s);
    System.out.println("@@wantsCheckBlocksInTheOuterThirds\tEND");
  }

  @Test
  void asksForCheckBlocks() {
    for (String s : objections(new ValidationBlocks(), good().without("C1", "C2", "C3")))
      System.out.println("@@asksForCheckBlocks\t" + s);
    System.out.println("@@asksForCheckBlocks\tEND");
  }

  @Test
  void refusesACheckBlockThatDisagrees() {
    for (String s : objections(new CheckBlockEn(), good().certifiedWrongly("C2", 1.06)))
      System.out.println("@@refusesACheckBlockThatDisagrees\t" + s);
    System.out.println("@@refusesACheckBlockThatDisagrees\tEND");
  }

  @Test
  void saysNothingOfACheckBlockOutOfRange() {
    for (String s :
        objections(
            new CheckBlockEn(),
            good()
                .reading(
                    r ->
                        r.block().equals("C1")
                            ? With.component(r, "displayed", r.displayed() + 200)
                            : r))) System.out.println("@@saysNothingOfACheckBlockOutOfRange\t" + s);
    System.out.println("@@saysNothingOfACheckBlockOutOfRange\tEND");
  }

  @Test
  void asksForCheckBlocksToCompare() {
    for (String s : objections(new CheckBlockEn(), good().without("C1", "C2", "C3")))
      System.out.println("@@asksForCheckBlocksToCompare\t" + s);
    System.out.println("@@asksForCheckBlocksToCompare\tEND");
  }

  @Test
  void refusesAnErrorAboveThePermissible() {
    for (String s : objections(new CheckBlockError(), good().certifiedWrongly("C2", 1.08)))
      System.out.println("@@refusesAnErrorAboveThePermissible\t" + s);
    System.out.println("@@refusesAnErrorAboveThePermissible\tEND");
  }

  @Test
  void asksWhyAnErrorLiesInTheGuardBand() {
    for (String s :
        objections(
            new CheckBlockError(),
            good()
                .policed("decisionRule", Optional.of(new DecisionRule(1, false)))
                .certifiedWrongly("C2", 0.97)))
      System.out.println("@@asksWhyAnErrorLiesInTheGuardBand\t" + s);
    System.out.println("@@asksWhyAnErrorLiesInTheGuardBand\tEND");
  }

  @Test
  void asksForThePermissibleError() {
    for (String s :
        objections(new CheckBlockError(), good().policed("permissibleError", Optional.empty())))
      System.out.println("@@asksForThePermissibleError\t" + s);
    System.out.println("@@asksForThePermissibleError\tEND");
  }

  @Test
  void refusesACurveLessCertainThanItsPurpose() {
    for (String s :
        objections(
            new UncertaintyTarget(),
            good().policed("targetUncertainty", Optional.of(ErrorLimits.constant(true, 0.02)))))
      System.out.println("@@refusesACurveLessCertainThanItsPurpose\t" + s);
    System.out.println("@@refusesACurveLessCertainThanItsPurpose\tEND");
  }

  @Test
  void asksForTheTarget() {
    for (String s :
        objections(new UncertaintyTarget(), good().policed("targetUncertainty", Optional.empty())))
      System.out.println("@@asksForTheTarget\t" + s);
    System.out.println("@@asksForTheTarget\tEND");
  }

  @Test
  void refusesARangeBeyondTheBlocks() {
    for (String s :
        objections(
            new NoExtrapolation(),
            altered(
                chosen ->
                    With.component(
                        chosen,
                        "curve",
                        chosen
                            .curve()
                            .withRange(new ValidRange(1100, 1600, 232.8, 497.4, "wish", "wish"))))))
      System.out.println("@@refusesARangeBeyondTheBlocks\t" + s);
    System.out.println("@@refusesARangeBeyondTheBlocks\tEND");
  }

  @Test
  void asksForConditions() {
    for (String s :
        objections(
            new ConditionsStated(),
            good()
                .identified("testForceNewtons", OptionalDouble.empty())
                .block("B2", "massKg", OptionalDouble.empty())
                .block("B2", "productForm", Optional.empty())
                .block("B3", "productForm", Optional.empty())
                .reading(
                    r ->
                        r.line() == 8
                            ? With.component(r, "temperatureC", OptionalDouble.empty())
                            : r))) System.out.println("@@asksForConditions\t" + s);
    System.out.println("@@asksForConditions\tEND");
  }

  @Test
  void refusesTargetsFromNowhere() {
    for (String s : objections(new PolicyCited(), good().policed("origin", Optional.empty())))
      System.out.println("@@refusesTargetsFromNowhere\t" + s);
    System.out.println("@@refusesTargetsFromNowhere\tEND");
  }

  @Test
  void asksWhyAnExampleServes() {
    for (String s : objections(new PolicyCited(), good().policed("example", true)))
      System.out.println("@@asksWhyAnExampleServes\t" + s);
    System.out.println("@@asksWhyAnExampleServes\tEND");
  }

  @Test
  void asksForTargets() {
    for (String s : objections(new PolicyCited(), With.component(good(), "policy", Policy.EMPTY)))
      System.out.println("@@asksForTargets\t" + s);
    System.out.println("@@asksForTargets\tEND");
  }

  @Test
  void asksForADecisionRule() {
    for (String s :
        objections(new DecisionRuleStated(), good().policed("decisionRule", Optional.empty())))
      System.out.println("@@asksForADecisionRule\t" + s);
    System.out.println("@@asksForADecisionRule\tEND");
  }

  @Test
  void notesUncertaintyCountedTwice() {
    for (String s :
        objections(
            new DecisionRuleStated(),
            good().policed("decisionRule", Optional.of(new DecisionRule(1, true)))))
      System.out.println("@@notesUncertaintyCountedTwice\t" + s);
    System.out.println("@@notesUncertaintyCountedTwice\tEND");
  }

  @Test
  void namesALimitThatNoCheckKnows() {
    for (String s : objections(check("policy-limits-known"), good().limited("block-thicknes", 3)))
      System.out.println("@@namesALimitThatNoCheckKnows\t" + s);
    System.out.println("@@namesALimitThatNoCheckKnows\tEND");
  }

  private static Check check(String id) {
    return Checks.all().stream().filter(c -> c.id().equals(id)).findFirst().orElseThrow();
  }
}
