package fettle.acceptance;

import fettle.policy.DecisionRule;
import java.util.List;

/** How uncertainty counts in a decision is agreed beforehand. */
final class DecisionRuleStated extends StatedCheck {
  DecisionRuleStated() {
    super(
        new Statement(
            "decision-rule",
            Severity.STOPS_RELEASE,
            "Is the decision rule stated, and is the uncertainty counted only once?",
            "Without a rule agreed beforehand a result near a limit can be read either way; a guard"
                + " band on a limit that already holds one counts the uncertainty twice.",
            "State the rule in the policy file; use a guard band factor of 0 with limits that"
                + " already allow for uncertainty.",
            "ISO/IEC 17025:2017, 7.8.6; ILAC-G8:09/2019, 4.2" + FROM_MEMORY));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    if (evidence.policy().decisionRule().isEmpty()) {
      return List.of(
          missing()
              .saying(
                  "The policy states no decision rule; give the guard band as a multiple of U in the"
                      + " policy file, 0 for simple acceptance."));
    }
    DecisionRule rule = evidence.policy().decisionRule().get();
    String band =
        rule.guardBandFactor() == 0
            ? "simple acceptance"
            : "a guard band of " + Figure.of(rule.guardBandFactor(), 2) + " U";
    if (rule.limitsAlreadyGuarded() && rule.guardBandFactor() > 0) {
      return List.of(
          failed(Severity.NOTE)
              .judged(rule.guardBandFactor(), 0)
              .saying(
                  "The decision rule is "
                      + band
                      + ", but the limits already allow for measurement uncertainty, so that it"
                      + " counts twice."));
    }
    return List.of(
        passed()
            .saying(
                "The decision rule is "
                    + band
                    + (rule.limitsAlreadyGuarded()
                        ? " on limits that already allow for measurement uncertainty."
                        : ".")));
  }
}
