package fettle.acceptance;

import fettle.block.Certificate;
import fettle.calibration.BlockResponse;
import fettle.calibration.ChosenCurve;
import fettle.curve.ValidRange;
import java.util.List;

/** A curve ends where its blocks end. */
final class NoExtrapolation extends CurveCheck {
  NoExtrapolation() {
    super(
        new Statement(
            "no-extrapolation",
            Severity.STOPS_RELEASE,
            "Does the released range end within the fitting blocks?",
            "Beyond the last block the model's shape is a guess that no data bear.",
            "Shorten the range to the blocks, or add a block beyond the end that is wanted.",
            COMMON_PRACTICE
                + "; the end block's own expanded uncertainty is allowed for, as its certified"
                + " value is no better known"));
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    HardnessText text = HardnessText.of(evidence);
    ValidRange range = chosen.curve().range();
    List<BlockResponse> blocks = evidence.analysis().fittingBlocks();
    BlockResponse softest = blocks.get(0);
    BlockResponse hardest = blocks.get(blocks.size() - 1);
    double low = softest.certificate().certified() - allowance(softest.certificate());
    double high = hardest.certificate().certified() + allowance(hardest.certificate());
    double beyond = Math.max(low - range.hardnessLow(), range.hardnessHigh() - high);
    boolean within = beyond <= 0;
    return List.of(
        (within ? passed() : failed())
            .judged(Math.max(0, beyond), 0)
            .saying(
                "The range "
                    + text.range(range.hardnessLow(), range.hardnessHigh())
                    + " lies "
                    + (within ? "within" : text.size(beyond) + " beyond")
                    + " the fitting blocks "
                    + softest.block().id()
                    + " ("
                    + text.value(softest.certificate().certified())
                    + ") to "
                    + hardest.block().id()
                    + " ("
                    + text.value(hardest.certificate().certified())
                    + "), each with its U."));
  }

  private static double allowance(Certificate certificate) {
    return certificate.expandedUncertainty();
  }
}
