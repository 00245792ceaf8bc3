package fettle.acceptance;

import fettle.calibration.ChosenCurve;
import fettle.curve.Curve;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import java.util.List;

/**
 * Contact stiffness makes the hardness fall with about the second power of the frequency shift; the
 * rod's saturation raises the exponent a little.
 */
final class ResponseExponent extends CurveCheck {
  private static final String ID = "response-exponent";
  private static final CheckLimit LOW =
      new CheckLimit(
          ID + "-low", 1.8, CheckLimit.Unit.NUMBER, "exponent below which a reason is needed");
  private static final CheckLimit HIGH =
      new CheckLimit(ID, 2.6, CheckLimit.Unit.NUMBER, "exponent above which a reason is needed");
  private static final CheckLimit LOW_STOP =
      new CheckLimit(
          ID + "-low" + CheckLimit.STOP,
          1.5,
          CheckLimit.Unit.NUMBER,
          "exponent below which the release stops");
  private static final CheckLimit HIGH_STOP =
      new CheckLimit(
          ID + CheckLimit.STOP,
          3,
          CheckLimit.Unit.NUMBER,
          "exponent above which the release stops");

  ResponseExponent() {
    super(
        new Statement(
            ID,
            Severity.STOPS_RELEASE,
            "Does the hardness fall with the frequency shift as contact stiffness says?",
            "An exponent far from 2 is a mistake of data or unit: a wrong column, a conversion left"
                + " on, blocks of several alloys.",
            "Check unit and setting of the readings, then materials and marks of the blocks.",
            "derived: contact stiffness under a pyramid and resonance of a rod give 2.0 to 2.2; the"
                + " limits are common practice, no source"),
        LOW,
        HIGH,
        LOW_STOP,
        HIGH_STOP);
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    Curve curve = chosen.curve();
    if (curve.identity().method() != Method.UCI
        || curve.identity().responseKind() != ResponseKind.FREQUENCY_SHIFT
        || curve.identity().scale().isOrdinal()) {
      return List.of(
          passed()
              .saying(
                  "Not asked: only a frequency shift against a Vickers or Brinell hardness has this"
                      + " exponent."));
    }
    double middle = Math.sqrt(curve.range().responseLow() * curve.range().responseHigh());
    double[] line = new double[curve.beta().length + 2];
    curve.function().linearise(middle, curve.beta(), line);
    double exponent = -line[1] * middle / line[0];
    boolean below = exponent < 2;
    LimitInForce reason = (below ? LOW : HIGH).under(evidence.policy());
    LimitInForce stop = (below ? LOW_STOP : HIGH_STOP).under(evidence.policy());
    boolean passes = !crosses(exponent, reason, below);
    boolean stops = !passes && crosses(exponent, stop, below);
    LimitInForce limit = stops ? stop : reason;
    return List.of(
        (passes ? passed() : failed(stops ? Severity.STOPS_RELEASE : Severity.NEEDS_REASON))
            .judged(exponent, limit)
            .saying(
                "At the middle of the range, "
                    + Figure.of(middle, 4)
                    + " Hz, the hardness falls with the frequency shift to the power "
                    + Figure.measured(exponent, 3)
                    + ", "
                    + (passes ? "within the " : below ? "below the " : "above the ")
                    + limit.text()
                    + "; contact stiffness gives 2.0 to 2.2."));
  }

  private static boolean crosses(double exponent, LimitInForce limit, boolean below) {
    return below ? exponent < limit.value() : !(exponent <= limit.value());
  }
}
