package fettle.acceptance;

import fettle.calibration.CheckBlockResult;
import fettle.calibration.ChosenCurve;
import fettle.curve.Status;
import java.util.List;

/** A question asked of every check block within the range. */
abstract class CheckBlockCheck extends CurveCheck {
  CheckBlockCheck(Statement statement, CheckLimit... limits) {
    super(statement, limits);
  }

  @Override
  final List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    if (chosen.checkBlocks().isEmpty()) {
      return List.of(
          missing()
              .saying(
                  "No check block was read; give blocks that do not shape the curve the role check"
                      + " and read them."));
    }
    return chosen.checkBlocks().stream()
        .map(
            result ->
                result.status() == Status.IN_RANGE
                    ? ask(evidence, result)
                    : outside(evidence, chosen, result))
        .toList();
  }

  private Finding outside(Evidence evidence, ChosenCurve chosen, CheckBlockResult result) {
    HardnessText text = HardnessText.of(evidence);
    return missing(Severity.NOTE)
        .on(result.block())
        .saying(
            text.block(result.block())
                + ": its response is "
                + result.status().text()
                + ", "
                + text.range(
                    chosen.curve().range().hardnessLow(), chosen.curve().range().hardnessHigh())
                + ", where the curve says nothing; it neither proves nor disproves it.");
  }

  abstract Finding ask(Evidence evidence, CheckBlockResult result);
}
