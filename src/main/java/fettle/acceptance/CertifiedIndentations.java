package fettle.acceptance;

import fettle.calibration.BlockResponse;
import java.util.List;

/** A certified hardness rests on a number of indentations. */
final class CertifiedIndentations extends StatedCheck {
  private static final CheckLimit FEWEST =
      new CheckLimit(
          "certified-indentations", 5, CheckLimit.Unit.NUMBER, "fewest certified indentations");
  private static final CheckLimit ADVISED =
      new CheckLimit(
          "certified-indentations-advised",
          10,
          CheckLimit.Unit.NUMBER,
          "number below which a note is made");

  CertifiedIndentations() {
    super(
        new Statement(
            "certified-indentations",
            Severity.STOPS_RELEASE,
            "Does every certified hardness rest on enough indentations?",
            "A mean of few indentations says little of the whole face, and nothing of its"
                + " uniformity.",
            "Have further indentations made and certified, and state their number in the column"
                + " indentations.",
            "ASTM E18-19, A4.5.3.1 (five; read in an excerpt); ISO 6506-3, 6507-3 and 6508-3 alike"
                + FROM_MEMORY
                + "; ten is common practice, no source"),
        FEWEST,
        ADVISED);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    LimitInForce fewest = FEWEST.under(evidence.policy());
    LimitInForce advised = ADVISED.under(evidence.policy());
    return SubjectBlocks.of(evidence).stream().map(block -> ask(block, fewest, advised)).toList();
  }

  private Finding ask(BlockResponse block, LimitInForce fewest, LimitInForce advised) {
    String id = block.block().id();
    if (block.certificate().indentations().isEmpty()) {
      return missing()
          .on(block)
          .saying(
              "Block "
                  + id
                  + ": the number of certified indentations is not stated; fill the column"
                  + " indentations of the blocks table.");
    }
    int n = block.certificate().indentations().getAsInt();
    String rests =
        "Block " + id + " is certified on " + Figure.count(n, "indentation", "indentations");
    if (n < fewest.value()) {
      return failed()
          .judged(n, fewest)
          .on(block)
          .saying(rests + ", fewer than the " + fewest.text() + ".");
    }
    if (n < advised.value()) {
      return failed(Severity.NOTE)
          .judged(n, advised)
          .on(block)
          .saying(rests + ", which meets the minimum; more are advised, " + advised.text() + ".");
    }
    return passed().judged(n, fewest).on(block).saying(rests + ".");
  }
}
