package fettle.acceptance;

import fettle.block.ReferenceBlock;
import fettle.calibration.BlockResponse;
import fettle.quantity.Method;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A measured property of a block against what its method asks. Half of what is asked, or twice what
 * is allowed, stops the release; the rest needs a reason, such as coupling to a heavy support.
 */
abstract class BlockProperty extends StatedCheck {
  private final CheckLimit uci;
  private final CheckLimit rebound;
  private final String name;
  private final String column;
  private final boolean atLeast;

  BlockProperty(
      Statement statement,
      CheckLimit uci,
      CheckLimit rebound,
      String name,
      String column,
      boolean atLeast) {
    super(statement, uci, rebound);
    this.uci = uci;
    this.rebound = rebound;
    this.name = name;
    this.column = column;
    this.atLeast = atLeast;
  }

  abstract OptionalDouble of(ReferenceBlock block);

  @Override
  public final List<Finding> ask(Evidence evidence) {
    Method method = evidence.analysis().campaign().dossier().identity().method();
    LimitInForce limit = (method == Method.UCI ? uci : rebound).under(evidence.policy());
    return SubjectBlocks.of(evidence).stream().map(block -> ask(block, limit)).toList();
  }

  private Finding ask(BlockResponse block, LimitInForce limit) {
    OptionalDouble stated = of(block.block());
    String id = block.block().id();
    if (stated.isEmpty()) {
      return missing(Severity.NEEDS_REASON)
          .on(block)
          .saying(
              "Block "
                  + id
                  + ": its "
                  + name
                  + " is not stated; fill the column "
                  + column
                  + " of the blocks table.");
    }
    double value = stated.getAsDouble();
    boolean meets = atLeast ? value >= limit.value() : value <= limit.value();
    boolean far = atLeast ? value < limit.value() / 2 : value > 2 * limit.value();
    Answer answer = meets ? passed() : failed(far ? Severity.STOPS_RELEASE : Severity.NEEDS_REASON);
    return answer
        .judged(value, limit)
        .on(block)
        .saying(
            "Block "
                + id
                + " has "
                + name
                + " "
                + limit.figure(value)
                + ", "
                + (meets ? "within the " : atLeast ? "below the " : "above the ")
                + limit.text()
                + (far ? (atLeast ? " and below half of it." : " and above twice of it.") : "."));
  }
}
