package fettle.acceptance;

import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.calibration.BlockResponse;
import java.util.ArrayList;
import java.util.List;

/** A block that shaped the curve cannot prove it, not even under a second mark. */
final class FitAndCheckDisjoint extends StatedCheck {
  FitAndCheckDisjoint() {
    super(
        new Statement(
            "fit-and-check-disjoint",
            Severity.STOPS_RELEASE,
            "Are the check blocks other pieces than the fitting blocks?",
            "A piece that shaped the curve agrees with it by construction and proves nothing.",
            "Use a check block of another piece, best of another heat, with a certificate of its"
                + " own.",
            COMMON_PRACTICE));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    List<BlockResponse> checks = evidence.analysis().withRole(BlockRole.CHECK);
    if (checks.isEmpty()) {
      return List.of(
          missing()
              .saying(
                  "No check block was read; give a block the role check and read it like the"
                      + " others."));
    }
    List<Finding> findings = new ArrayList<>();
    for (BlockResponse check : checks) {
      findings.add(ask(check, evidence.analysis().fittingBlocks()));
    }
    return findings;
  }

  private Finding ask(BlockResponse check, List<BlockResponse> fitting) {
    Certificate own = check.certificate();
    if (own.number().isEmpty()) {
      return missing()
          .on(check)
          .saying(
              "Check block "
                  + check.block().id()
                  + ": without a certificate number it cannot be told from the fitting blocks; fill"
                  + " the column certificate of the blocks table.");
    }
    for (BlockResponse fit : fitting) {
      Certificate other = fit.certificate();
      if (own.number().equals(other.number())
          && own.certified() == other.certified()
          && own.expandedUncertainty() == other.expandedUncertainty()) {
        return failed()
            .on(check)
            .saying(
                "Check block "
                    + check.block().id()
                    + " and fitting block "
                    + fit.block().id()
                    + " carry the same certificate "
                    + own.number().get()
                    + " with the same value "
                    + new HardnessText(own.scale()).value(own.certified())
                    + "; they look like one piece under two marks.");
      }
    }
    return passed()
        .on(check)
        .saying(
            "Check block "
                + check.block().id()
                + " has a certificate of its own, "
                + own.number().get()
                + ".");
  }
}
