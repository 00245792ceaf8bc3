package fettle.calibration;

import fettle.curve.Curve;
import fettle.curve.CurveEvaluator;
import fettle.curve.ValidRange;
import fettle.policy.ErrorLimits;
import fettle.policy.Policy;
import java.util.function.DoublePredicate;

/**
 * Trims a curve's range from its ends inwards to where the simultaneous expanded uncertainty meets
 * the target and one step of the response changes the hardness by no more than the policy allows.
 */
final class RangeTrim {
  private static final int STEPS = 200;

  private RangeTrim() {}

  static ValidRange of(Curve curve, Policy policy) {
    ValidRange range = curve.range();
    CurveEvaluator evaluator = curve.evaluator();
    if (policy.targetUncertainty().isPresent()) {
      ErrorLimits target = policy.targetUncertainty().get();
      range =
          trim(
              curve,
              range,
              r -> evaluator.simultaneousHalfWidth(r) <= target.at(evaluator.hardness(r)),
              "expanded uncertainty reaches the target");
    }
    if (policy.responseResolution().isPresent() && policy.largestHardnessStep().isPresent()) {
      double resolution = policy.responseResolution().getAsDouble();
      double step = policy.largestHardnessStep().getAsDouble();
      range =
          trim(
              curve,
              range,
              r -> Math.abs(evaluator.hardness(r + resolution) - evaluator.hardness(r)) <= step,
              "one step of the response changes the hardness by more than allowed");
    }
    return range;
  }

  /** Where no response at all passes, the range is left and the checks say that it fails. */
  private static ValidRange trim(
      Curve curve, ValidRange range, DoublePredicate passes, String reason) {
    double low = range.responseLow();
    double high = range.responseHigh();
    double step = (high - low) / STEPS;
    int first = 0;
    while (first <= STEPS && !passes.test(low + first * step)) {
      first++;
    }
    if (first > STEPS) {
      return range;
    }
    int last = first;
    while (last < STEPS && passes.test(last + 1 == STEPS ? high : low + (last + 1) * step)) {
      last++;
    }
    double newLow =
        first == 0 ? low : boundary(low + first * step, low + (first - 1) * step, passes);
    double newHigh =
        last == STEPS ? high : boundary(low + last * step, low + (last + 1) * step, passes);
    double a = curve.function().value(newLow, curve.beta());
    double b = curve.function().value(newHigh, curve.beta());
    return new ValidRange(
        newLow,
        newHigh,
        Math.min(a, b),
        Math.max(a, b),
        first == 0 ? range.lowLimitedBy() : reason,
        last == STEPS ? range.highLimitedBy() : reason);
  }

  private static double boundary(double inside, double outside, DoublePredicate passes) {
    double in = inside;
    double out = outside;
    for (int k = 0; k < 50; k++) {
      double middle = 0.5 * (in + out);
      if (passes.test(middle)) {
        in = middle;
      } else {
        out = middle;
      }
    }
    return in;
  }
}
