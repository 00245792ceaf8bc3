package fettle.acceptance;

import fettle.calibration.ChosenCurve;
import java.util.List;

/** A model with too few blocks bends through them. */
final class EnoughBlocks extends CurveCheck {
  EnoughBlocks() {
    super(
        new Statement(
            "enough-blocks",
            Severity.STOPS_RELEASE,
            "Are there enough fitting blocks for the chosen model?",
            "Without blocks to spare the curve follows every wrong certificate, and its uncertainty"
                + " cannot be estimated.",
            "Add fitting blocks, or choose a model with fewer parameters.",
            "ISO 6143:2025, fewest points 3, 5, 7 for polynomials and 5 for power and exponential"
                + StatedCheck.FROM_MEMORY
                + "; never fewer than parameters + 2: derived"));
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    int m = evidence.analysis().fittingBlocks().size();
    int fewest = chosen.curve().model().fewestBlocks();
    boolean enough = m >= fewest;
    return List.of(
        (enough ? passed() : failed())
            .judged(m, fewest)
            .saying(
                "Model "
                    + chosen.curve().model()
                    + " ("
                    + chosen.curve().model().parameterCount()
                    + " parameters) rests on "
                    + Figure.count(m, "fitting block", "fitting blocks")
                    + "; it needs at least "
                    + fewest
                    + "."));
  }
}
