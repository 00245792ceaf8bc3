package fettle.acceptance;

import fettle.block.BlockRole;
import fettle.calibration.CheckBlockResult;
import fettle.calibration.ChosenCurve;
import fettle.curve.Status;
import fettle.curve.ValidRange;
import java.util.List;

/** A curve is validated only where blocks that did not shape it were read. */
final class ValidationBlocks extends CurveCheck {
  private static final CheckLimit FEWEST =
      new CheckLimit(
          "validation-blocks", 2, CheckLimit.Unit.NUMBER, "fewest check blocks within the range");

  ValidationBlocks() {
    super(
        new Statement(
            "validation-blocks",
            Severity.STOPS_RELEASE,
            "Do independent check blocks cover the range, with one in each outer third?",
            "The method is the laboratory's own, so it must be validated, and agreement in the"
                + " middle says nothing of the ends.",
            "Read further check blocks near the ends of the range, or release a shorter range.",
            "ISO/IEC 17025:2017, 7.2.2" + StatedCheck.FROM_MEMORY),
        FEWEST);
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    HardnessText text = HardnessText.of(evidence);
    ValidRange range = chosen.curve().range();
    String over = text.range(range.hardnessLow(), range.hardnessHigh());
    if (evidence.analysis().withRole(BlockRole.CHECK).isEmpty()) {
      return List.of(
          missing()
              .saying(
                  "No check block was read, so nothing proves the curve over "
                      + over
                      + "; give blocks that do not shape it the role check and read them."));
    }
    LimitInForce limit = FEWEST.under(evidence.policy());
    double third = (range.hardnessHigh() - range.hardnessLow()) / 3;
    List<CheckBlockResult> inside =
        chosen.checkBlocks().stream().filter(b -> b.status() == Status.IN_RANGE).toList();
    boolean low = inside.stream().anyMatch(b -> certified(b) <= range.hardnessLow() + third);
    boolean high = inside.stream().anyMatch(b -> certified(b) >= range.hardnessHigh() - third);
    String count =
        Figure.count(inside.size(), "check block lies", "check blocks lie")
            + " within the range "
            + over;
    if (inside.size() < limit.value()) {
      return List.of(
          failed()
              .judged(inside.size(), limit)
              .saying(count + ", fewer than the " + limit.text() + "."));
    }
    if (!low || !high) {
      String lower = text.range(range.hardnessLow(), range.hardnessLow() + third);
      String upper = text.range(range.hardnessHigh() - third, range.hardnessHigh());
      return List.of(
          failed()
              .judged(inside.size(), limit)
              .saying(
                  count
                      + ", but none in the "
                      + (low
                          ? "upper third, " + upper
                          : high
                              ? "lower third, " + lower
                              : "outer thirds, " + lower + " and " + upper)
                      + "."));
    }
    return List.of(
        passed()
            .judged(inside.size(), limit)
            .saying(count + ", with at least one in each outer third."));
  }

  private static double certified(CheckBlockResult result) {
    return result.block().certificate().certified();
  }
}
