package fettle.acceptance;

import fettle.calibration.BlockResponse;
import fettle.calibration.ChosenCurve;
import fettle.curve.Curve;
import fettle.curve.CurveEvaluator;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What certificates declare as shared must be in the curve's uncertainty, whole. */
final class SharedSourceInCurve extends CurveCheck {
  SharedSourceInCurve() {
    super(
        new Statement(
            "shared-source-in-curve",
            Severity.STOPS_RELEASE,
            "Is every declared shared source part of the curve's uncertainty?",
            "The uncertainty of the curve cannot be smaller than what a machine behind its blocks"
                + " shares with all of them.",
            "Fit the draft again from the certificates as they are now.",
            "derived: the variance of the curve holds the square of each shared part"));
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    Map<String, Integer> machines = new LinkedHashMap<>();
    for (BlockResponse block : evidence.analysis().fittingBlocks()) {
      if (block.certificate().sharedUncertainty().orElse(0) > 0) {
        block
            .certificate()
            .referenceMachine()
            .ifPresent(machine -> machines.merge(machine, 1, Integer::sum));
      }
    }
    if (machines.isEmpty()) {
      return List.of(
          missing()
              .saying(
                  "No fitting block declares a shared uncertainty with its reference machine; fill"
                      + " the columns reference_machine and u_shared of the blocks table."));
    }
    List<Finding> findings = new ArrayList<>();
    machines.forEach((machine, n) -> findings.add(ask(evidence, chosen.curve(), machine, n)));
    return findings;
  }

  private Finding ask(Evidence evidence, Curve curve, String machine, int n) {
    CurveEvaluator evaluator = curve.evaluator();
    double middle = 0.5 * (curve.range().responseLow() + curve.range().responseHigh());
    double part = Math.abs(evaluator.sharedPart(middle, machine));
    double whole = evaluator.curveAt(middle).standardUncertainty();
    HardnessText text = HardnessText.of(evidence);
    // The share is a term of the whole; only rounding may put it above.
    boolean held = part > 0 && part <= whole * (1 + 1e-9);
    return (held ? passed() : failed())
        .judged(part, whole)
        .saying(
            "Machine "
                + machine
                + " is shared by "
                + Figure.count(n, "fitting block", "fitting blocks")
                + " and contributes "
                + (part == 0 ? "nothing" : text.size(part))
                + " to the curve's standard uncertainty of "
                + text.size(whole)
                + " at the middle of the range"
                + (held ? "." : "; it should be a part of it and above zero."));
  }
}
