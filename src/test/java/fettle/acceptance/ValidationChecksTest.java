package fettle.acceptance;

import static fettle.acceptance.Answers.altered;
import static fettle.acceptance.Answers.objections;
import static fettle.acceptance.SimulatedCampaign.good;
import static org.assertj.core.api.Assertions.assertThat;

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
    assertThat(objections(new ValidationBlocks(), good().without("C1", "C2")))
        .containsExactly(
            "FAILED, stops release: 1 check block lies within the range 247.8 to 439.1 "
                + "HV10, fewer than the limit 2 (default).");
  }

  @Test
  void wantsCheckBlocksInTheOuterThirds() {
    assertThat(objections(new ValidationBlocks(), good().without("C3")))
        .containsExactly(
            "FAILED, stops release: 2 check blocks lie within the range 247.8 to 439.1 "
                + "HV10, but none in the upper third, 375.3 to 439.1 HV10.");
  }

  @Test
  void asksForCheckBlocks() {
    assertThat(objections(new ValidationBlocks(), good().without("C1", "C2", "C3")))
        .containsExactly(
            "DATA_MISSING, stops release: No check block was read, so nothing proves the "
                + "curve over 247.8 to 439.1 HV10; give blocks that do not shape it the role "
                + "check and read them.");
  }

  @Test
  void refusesACheckBlockThatDisagrees() {
    assertThat(objections(new CheckBlockEn(), good().certifiedWrongly("C2", 1.06)))
        .containsExactly(
            "FAILED, stops release: Block C2 (certified 357.1 HV10): the curve gives "
                + "341.0 HV10, a difference of −16 HV10 (−4.5 %) with U = 8.8 HV10, |E_n| = "
                + "1.8, above the limit 1 (default).");
  }

  @Test
  void saysNothingOfACheckBlockOutOfRange() {
    assertThat(
            objections(
                new CheckBlockEn(),
                good()
                    .reading(
                        r ->
                            r.block().equals("C1")
                                ? With.component(r, "displayed", r.displayed() + 200)
                                : r)))
        .containsExactly(
            "DATA_MISSING, note: Block C1 (certified 263.1 HV10): its response is above "
                + "range, 247.8 to 439.1 HV10, where the curve says nothing; it neither proves "
                + "nor disproves it.");
  }

  @Test
  void asksForCheckBlocksToCompare() {
    assertThat(objections(new CheckBlockEn(), good().without("C1", "C2", "C3")))
        .containsExactly(
            "DATA_MISSING, stops release: No check block was read; give blocks that do "
                + "not shape the curve the role check and read them.");
  }

  @Test
  void refusesAnErrorAboveThePermissible() {
    assertThat(objections(new CheckBlockError(), good().certifiedWrongly("C2", 1.08)))
        .containsExactly(
            "FAILED, stops release: Block C2 (certified 363.9 HV10): the error is −23 "
                + "HV10 (−6.3 %) with U = 8.8 HV10; permissible are ±18 HV10 (QP-7:2026, "
                + "section 3), by the decision rule: fail.");
  }

  @Test
  void asksWhyAnErrorLiesInTheGuardBand() {
    assertThat(
            objections(
                new CheckBlockError(),
                good()
                    .policed("decisionRule", Optional.of(new DecisionRule(1, false)))
                    .certifiedWrongly("C2", 0.97)))
        .containsExactly(
            "FAILED, needs a written reason: Block C2 (certified 326.8 HV10): the error "
                + "is +14 HV10 (+4.3 %) with U = 8.8 HV10; permissible are ±16 HV10 "
                + "(QP-7:2026, section 3), by the decision rule: conditional pass.");
  }

  @Test
  void asksForThePermissibleError() {
    assertThat(
            objections(new CheckBlockError(), good().policed("permissibleError", Optional.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: Block C1 (certified 263.1 HV10): the policy "
                + "states no permissible error; give one with its citation in the policy file.",
            "DATA_MISSING, stops release: Block C2 (certified 336.9 HV10): the policy "
                + "states no permissible error; give one with its citation in the policy file.",
            "DATA_MISSING, stops release: Block C3 (certified 422.8 HV10): the policy "
                + "states no permissible error; give one with its citation in the policy file.");
  }

  @Test
  void refusesACurveLessCertainThanItsPurpose() {
    assertThat(
            objections(
                new UncertaintyTarget(),
                good().policed("targetUncertainty", Optional.of(ErrorLimits.constant(true, 0.02)))))
        .containsExactly(
            "FAILED, stops release: At the lowest response, 439.1 HV10, the curve's "
                + "simultaneous U is 12 HV10 (2.8 %); the target is 8.8 HV10 (2.0 %) "
                + "(QP-7:2026, section 3).",
            "FAILED, stops release: At the middle response, 323.3 HV10, the curve's "
                + "simultaneous U is 7.7 HV10 (2.4 %); the target is 6.5 HV10 (2.0 %) "
                + "(QP-7:2026, section 3).",
            "FAILED, stops release: At the highest response, 247.8 HV10, the curve's "
                + "simultaneous U is 7.0 HV10 (2.8 %); the target is 5.0 HV10 (2.0 %) "
                + "(QP-7:2026, section 3).");
  }

  @Test
  void asksForTheTarget() {
    assertThat(
            objections(
                new UncertaintyTarget(), good().policed("targetUncertainty", Optional.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: The policy states no target uncertainty; give "
                + "the largest expanded uncertainty that serves the purpose, with its "
                + "citation, in the policy file.");
  }

  @Test
  void refusesARangeBeyondTheBlocks() {
    assertThat(
            objections(
                new NoExtrapolation(),
                altered(
                    chosen ->
                        With.component(
                            chosen,
                            "curve",
                            chosen
                                .curve()
                                .withRange(
                                    new ValidRange(1100, 1600, 232.8, 497.4, "wish", "wish"))))))
        .containsExactly(
            "FAILED, stops release: The range 232.8 to 497.4 HV10 lies 48 HV10 beyond "
                + "the fitting blocks B1 (247.1 HV10) to B8 (440.5 HV10), each with its U.");
  }

  @Test
  void asksForConditions() {
    assertThat(
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
                                : r)))
        .containsExactly(
            "DATA_MISSING, stops release: Not stated: test force (--test-force in the "
                + "dossier); mass_kg for B2; product_form for B2, B3; temperature_c for 4 of "
                + "132 readings, first in run-1.csv, line 8. Supply them.");
  }

  @Test
  void refusesTargetsFromNowhere() {
    assertThat(objections(new PolicyCited(), good().policed("origin", Optional.empty())))
        .containsExactly(
            "FAILED, stops release: Policy \"Titanium, first issue\" states targets or a "
                + "rule, but not where they come from.");
  }

  @Test
  void asksWhyAnExampleServes() {
    assertThat(objections(new PolicyCited(), good().policed("example", true)))
        .containsExactly(
            "FAILED, needs a written reason: Policy \"Titanium, first issue\" is marked as "
                + "an example; its figures have not been checked against the laboratory's own "
                + "copies of the standards.");
  }

  @Test
  void asksForTargets() {
    assertThat(objections(new PolicyCited(), With.component(good(), "policy", Policy.EMPTY)))
        .containsExactly(
            "DATA_MISSING, stops release: Policy \"no policy\" states no target "
                + "uncertainty, no permissible error and no decision rule; give them with "
                + "their origin in a policy file.");
  }

  @Test
  void asksForADecisionRule() {
    assertThat(
            objections(new DecisionRuleStated(), good().policed("decisionRule", Optional.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: The policy states no decision rule; give the "
                + "guard band as a multiple of U in the policy file, 0 for simple acceptance.");
  }

  @Test
  void notesUncertaintyCountedTwice() {
    assertThat(
            objections(
                new DecisionRuleStated(),
                good().policed("decisionRule", Optional.of(new DecisionRule(1, true)))))
        .containsExactly(
            "FAILED, note: The decision rule is a guard band of 1 U, but the limits "
                + "already allow for measurement uncertainty, so that it counts twice.");
  }

  @Test
  void namesALimitThatNoCheckKnows() {
    assertThat(objections(check("policy-limits-known"), good().limited("block-thicknes", 3)))
        .containsExactly(
            "FAILED, stops release: The policy's limit \"block-thicknes\" (QP-7:2026, "
                + "table 2, entered by A. Tester on 2026-04-01) belongs to no check and is not "
                + "in force.");
  }

  private static Check check(String id) {
    return Checks.all().stream().filter(c -> c.id().equals(id)).findFirst().orElseThrow();
  }
}
