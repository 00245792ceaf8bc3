package fettle.acceptance;

import fettle.calibration.BlockResponse;
import java.util.List;

/** A block mean of one or two readings has no scatter to judge. */
final class ReadingsPerBlock extends StatedCheck {
  private static final CheckLimit ADVISED =
      new CheckLimit(
          "readings-per-block",
          5,
          CheckLimit.Unit.NUMBER,
          "number of kept readings below which a reason is needed");
  private static final CheckLimit FEWEST =
      new CheckLimit(
          "readings-per-block" + CheckLimit.STOP,
          3,
          CheckLimit.Unit.NUMBER,
          "number of kept readings below which the release stops");

  ReadingsPerBlock() {
    super(
        new Statement(
            "readings-per-block",
            Severity.STOPS_RELEASE,
            "Was every block read often enough?",
            "With fewer than three readings a slip of the probe cannot be seen, and the block's"
                + " mean is as uncertain as one reading.",
            "Read the block again, best in a further run.",
            COMMON_PRACTICE),
        ADVISED,
        FEWEST);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    LimitInForce advised = ADVISED.under(evidence.policy());
    LimitInForce fewest = FEWEST.under(evidence.policy());
    return SubjectBlocks.of(evidence).stream().map(block -> ask(block, advised, fewest)).toList();
  }

  private Finding ask(BlockResponse block, LimitInForce advised, LimitInForce fewest) {
    int n = block.count();
    boolean stops = n < fewest.value();
    LimitInForce limit = stops ? fewest : advised;
    Answer answer =
        stops ? failed() : n < advised.value() ? failed(Severity.NEEDS_REASON) : passed();
    return answer
        .judged(n, limit)
        .on(block)
        .saying(
            "Block "
                + block.block().id()
                + " has "
                + Figure.count(n, "kept reading", "kept readings")
                + " in "
                + Figure.count(block.readingsPerRun().size(), "run", "runs")
                + (answer.outcome() == Outcome.PASSED ? "." : ", below the " + limit.text() + "."));
  }
}
