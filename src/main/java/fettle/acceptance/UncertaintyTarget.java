package fettle.acceptance;

import fettle.calibration.ChosenCurve;
import fettle.curve.Curve;
import fettle.curve.CurveEvaluator;
import fettle.policy.ErrorLimits;
import java.util.ArrayList;
import java.util.List;

/** The curve as released must be as certain as its purpose asks, everywhere. */
final class UncertaintyTarget extends CurveCheck {
  /** Bisection of the range's ends stops within rounding of the target. */
  private static final double ROUNDING = 1e-9;

  UncertaintyTarget() {
    super(
        new Statement(
            "uncertainty-target",
            Severity.STOPS_RELEASE,
            "Does the curve's uncertainty meet the target at both ends and in the middle?",
            "A curve less certain than its purpose asks cannot serve it, however well it fits.",
            "Release a shorter range, read more blocks where it is worst, or ask whether the purpose"
                + " allows a larger target.",
            "target measurement uncertainty, VIM 2.34 (JCGM 200:2012, from memory), with the value"
                + " of the policy"));
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    if (evidence.policy().targetUncertainty().isEmpty()) {
      return List.of(
          missing()
              .saying(
                  "The policy states no target uncertainty; give the largest expanded uncertainty"
                      + " that serves the purpose, with its citation, in the policy file."));
    }
    ErrorLimits target = evidence.policy().targetUncertainty().get();
    Curve curve = chosen.curve();
    double low = curve.range().responseLow();
    double high = curve.range().responseHigh();
    List<Finding> findings = new ArrayList<>();
    findings.add(ask(evidence, curve, target, low, "lowest response"));
    findings.add(ask(evidence, curve, target, 0.5 * (low + high), "middle response"));
    findings.add(ask(evidence, curve, target, high, "highest response"));
    return findings;
  }

  private Finding ask(
      Evidence evidence, Curve curve, ErrorLimits target, double response, String place) {
    HardnessText text = HardnessText.of(evidence);
    CurveEvaluator evaluator = curve.evaluator();
    double hardness = evaluator.hardness(response);
    double u = evaluator.simultaneousHalfWidth(response);
    double limit = target.at(hardness);
    boolean meets = u <= limit * (1 + ROUNDING);
    return (meets ? passed() : failed())
        .judged(u, limit)
        .saying(
            "At the "
                + place
                + ", "
                + text.value(hardness)
                + ", the curve's simultaneous U is "
                + text.size(u, hardness)
                + "; the target is "
                + text.size(limit, hardness)
                + " ("
                + evidence.policy().origin().orElse("policy, no origin stated")
                + ").");
  }
}
