package fettle.acceptance;

import fettle.calibration.Analysis;
import fettle.calibration.Calibration;
import fettle.calibration.ChosenCurve;
import fettle.curve.Curve;
import fettle.refusal.InputRefusedException;
import java.util.List;

/** The same blocks and readings must give the same curve once more. */
final class Recomputation extends CurveCheck {
  private static final CheckLimit DIFFERENCE =
      new CheckLimit(
          "recomputation",
          1e-10,
          CheckLimit.Unit.NUMBER,
          "largest relative difference of hardness and uncertainty");
  private static final int PLACES = 11;

  Recomputation() {
    super(
        new Statement(
            "recomputation",
            Severity.STOPS_RELEASE,
            "Does the campaign give the same curve when it is computed again?",
            "A curve that does not follow from its own readings and certificates cannot be"
                + " defended.",
            "Fit the draft again; if the difference stays, compare blocks, exclusions and policy"
                + " with those of the draft.",
            "ISO/IEC 17025:2017, 7.11.6" + StatedCheck.FROM_MEMORY),
        DIFFERENCE);
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    Analysis again;
    try {
      again = Calibration.analyse(evidence.analysis().campaign(), chosen.choice());
    } catch (InputRefusedException refusal) {
      return List.of(failed().saying("Computed again, the campaign is refused: " + refusal.what()));
    }
    if (again.chosen().isEmpty()
        || !again.chosen().get().curve().model().equals(chosen.curve().model())) {
      return List.of(
          failed()
              .saying(
                  "Computed again, the campaign gives "
                      + again
                          .chosen()
                          .map(other -> "model " + other.curve().model())
                          .orElse("no curve")
                      + " instead of model "
                      + chosen.curve().model()
                      + "."));
    }
    LimitInForce limit = DIFFERENCE.under(evidence.policy());
    double largest = largest(chosen.curve(), again.chosen().get().curve());
    boolean same = largest <= limit.value();
    return List.of(
        (same ? passed() : failed())
            .judged(largest, limit)
            .saying(
                "Computed again at "
                    + PLACES
                    + " responses over the range, hardness and uncertainty differ by at most "
                    + Figure.of(largest, 2)
                    + " of their size, "
                    + (same ? "within the " : "above the ")
                    + limit.text()
                    + "."));
  }

  private static double largest(Curve kept, Curve again) {
    double largest = 0;
    for (int k = 0; k < PLACES; k++) {
      double share = k / (PLACES - 1.0);
      double r =
          kept.range().responseLow()
              + share * (kept.range().responseHigh() - kept.range().responseLow());
      var a = kept.evaluator().curveAt(r);
      var b = again.evaluator().curveAt(r);
      largest = Math.max(largest, relative(a.hardness(), b.hardness()));
      largest = Math.max(largest, relative(a.expandedUncertainty(), b.expandedUncertainty()));
    }
    return largest;
  }

  private static double relative(double a, double b) {
    return a == b ? 0 : Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b));
  }
}
