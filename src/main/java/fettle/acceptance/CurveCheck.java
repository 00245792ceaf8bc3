package fettle.acceptance;

import fettle.calibration.ChosenCurve;
import java.util.List;

/** A check that can be asked of a chosen curve only. */
abstract class CurveCheck extends StatedCheck {
  CurveCheck(Statement statement, CheckLimit... limits) {
    super(statement, limits);
  }

  @Override
  public final List<Finding> ask(Evidence evidence) {
    return evidence
        .analysis()
        .chosen()
        .map(chosen -> ask(evidence, chosen))
        .orElseGet(
            () ->
                List.of(
                    missing()
                        .saying(
                            "There is no curve to ask: none was recommended and none was chosen;"
                                + " look at the candidates with `fettle fit`, then name one with"
                                + " --model, --by and --reason.")));
  }

  abstract List<Finding> ask(Evidence evidence, ChosenCurve chosen);
}
