package fettle.acceptance;

import fettle.calibration.ChosenCurve;
import java.util.List;

/** An ill-conditioned fit has parameters that the blocks do not determine. */
final class FitConditioning extends CurveCheck {
  private static final CheckLimit NOTE =
      new CheckLimit(
          "fit-conditioning-note", 1e6, CheckLimit.Unit.NUMBER, "condition number worth a note");
  private static final CheckLimit LARGEST =
      new CheckLimit("fit-conditioning", 1e8, CheckLimit.Unit.NUMBER, "largest condition number");

  FitConditioning() {
    super(
        new Statement(
            "fit-conditioning",
            Severity.STOPS_RELEASE,
            "Do the blocks determine the model's parameters?",
            "Near-dependent parameters turn rounding and small errors of the data into large errors"
                + " of the curve.",
            "Choose a model with fewer parameters, or add blocks where none are.",
            COMMON_PRACTICE),
        NOTE,
        LARGEST);
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    double condition = chosen.fit().chosen().conditionNumber();
    LimitInForce note = NOTE.under(evidence.policy());
    LimitInForce largest = LARGEST.under(evidence.policy());
    boolean stops = !(condition <= largest.value());
    boolean noted = !stops && condition > note.value();
    return List.of(
        (stops ? failed() : noted ? failed(Severity.NOTE) : passed())
            .judged(condition, noted ? note : largest)
            .saying(
                "The fit of model "
                    + chosen.curve().model()
                    + " settled after "
                    + Figure.count(chosen.fit().chosen().iterations(), "iteration", "iterations")
                    + " with condition number "
                    + Figure.measured(condition, 2)
                    + ", "
                    + (stops || noted ? "above the " : "within the ")
                    + (noted ? note : largest).text()
                    + "."));
  }
}
