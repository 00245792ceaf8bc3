package fettle.acceptance;

import fettle.policy.Policy;
import java.util.List;

/** A limit without its document is nobody's limit. */
final class PolicyCited extends StatedCheck {
  PolicyCited() {
    super(
        new Statement(
            "policy-cited",
            Severity.STOPS_RELEASE,
            "Do the policy's targets and rule say where they come from, and is it the laboratory's"
                + " own?",
            "Limits differ between documents and editions; who asks later must find the one that was"
                + " meant.",
            "State origin with document and edition in the policy file; check an example against"
                + " your own copies of the standards and then remove its mark.",
            COMMON_PRACTICE));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    Policy policy = evidence.policy();
    boolean states =
        policy.targetUncertainty().isPresent()
            || policy.permissibleError().isPresent()
            || policy.decisionRule().isPresent();
    if (!states) {
      return List.of(
          missing()
              .saying(
                  "Policy \""
                      + policy.title()
                      + "\" states no target uncertainty, no permissible error and no decision"
                      + " rule; give them with their origin in a policy file."));
    }
    if (policy.origin().isEmpty() || policy.origin().get().isBlank()) {
      return List.of(
          failed()
              .saying(
                  "Policy \""
                      + policy.title()
                      + "\" states targets or a rule, but not where they come from."));
    }
    if (policy.example()) {
      return List.of(
          failed(Severity.NEEDS_REASON)
              .saying(
                  "Policy \""
                      + policy.title()
                      + "\" is marked as an example; its figures have not been checked against the"
                      + " laboratory's own copies of the standards."));
    }
    return List.of(
        passed()
            .saying(
                "Policy \""
                    + policy.title()
                    + "\" rests on "
                    + policy.origin().get().strip()
                    + "."));
  }
}
