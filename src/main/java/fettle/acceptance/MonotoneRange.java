package fettle.acceptance;

import fettle.calibration.ChosenCurve;
import fettle.curve.Curve;
import java.util.List;

/** One response must give one hardness. */
final class MonotoneRange extends CurveCheck {
  private static final CheckLimit SHARE =
      new CheckLimit(
          "monotone-range",
          0.999,
          CheckLimit.Unit.NUMBER,
          "smallest share of parameter draws that are monotone");

  MonotoneRange() {
    super(
        new Statement(
            "monotone-range",
            Severity.STOPS_RELEASE,
            "Is the curve strictly monotone over its range, and so for every curve the data allow?",
            "A curve that turns gives two hardnesses for one response; one that may turn within its"
                + " uncertainty is no better.",
            "Choose a model with fewer parameters, add blocks where the curve is flat, or release a"
                + " shorter range.",
            "derived: proof for the curve, draws of the parameters for what the data allow"),
        SHARE);
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    Curve curve = chosen.curve();
    double low = curve.range().responseLow();
    double high = curve.range().responseHigh();
    LimitInForce limit = SHARE.under(evidence.policy());
    double share = chosen.monotoneShare();
    boolean proven = curve.function().monotonicity(curve.beta(), low, high).isProven();
    boolean passes = proven && share >= limit.value();
    String where = " for responses from " + Figure.of(low, 5) + " to " + Figure.of(high, 5);
    return List.of(
        (passes ? passed() : failed())
            .judged(share, limit)
            .saying(
                "The curve is "
                    + (proven ? "proven" : "not proven")
                    + " strictly monotone"
                    + where
                    + "; of the curves drawn within its uncertainty a share of "
                    + Figure.of(share, 4)
                    + " is, "
                    + (share >= limit.value() ? "at least the " : "below the ")
                    + limit.text()
                    + "."));
  }
}
