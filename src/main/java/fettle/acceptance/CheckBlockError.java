package fettle.acceptance;

import fettle.calibration.CheckBlockResult;
import fettle.policy.Conformity;

/** Check blocks must be met within the permissible error, by the decision rule of the policy. */
final class CheckBlockError extends CheckBlockCheck {
  CheckBlockError() {
    super(
        new Statement(
            "check-block-error",
            Severity.STOPS_RELEASE,
            "Is the error on every check block within the permissible error?",
            "Agreement within a large uncertainty is not enough for use; the error itself must be"
                + " small enough for the purpose.",
            "Find the cause of the error, or ask whether the purpose allows a larger one and state"
                + " that with its citation in the policy.",
            "JCGM 106:2012, clause 8, with the permissible error of the policy"));
  }

  @Override
  Finding ask(Evidence evidence, CheckBlockResult result) {
    HardnessText text = HardnessText.of(evidence);
    if (result.permissibleError().isEmpty()) {
      return missing()
          .on(result.block())
          .saying(
              text.block(result.block())
                  + ": the policy states no permissible error; give one with its citation in the"
                  + " policy file.");
    }
    double limit = result.permissibleError().getAsDouble();
    double error = Math.abs(result.deviation());
    double certified = result.block().certificate().certified();
    boolean inside = error <= limit;
    boolean guarded =
        result.conformity().filter(verdict -> verdict == Conformity.CONDITIONAL_PASS).isPresent();
    Answer answer = inside ? guarded ? failed(Severity.NEEDS_REASON) : passed() : failed();
    return answer
        .judged(error, limit)
        .on(result.block())
        .saying(
            text.block(result.block())
                + ": the error is "
                + text.difference(result.deviation(), certified)
                + " with U = "
                + text.size(result.expandedUncertainty())
                + "; permissible are ±"
                + text.size(limit)
                + " ("
                + evidence.policy().origin().orElse("policy, no origin stated")
                + ")"
                + result
                    .conformity()
                    .map(verdict -> ", by the decision rule: " + verdict.text())
                    .orElse("")
                + ".");
  }
}
