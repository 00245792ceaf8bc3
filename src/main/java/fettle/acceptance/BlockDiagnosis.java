package fettle.acceptance;

import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.calibration.CandidateFit;
import fettle.calibration.ResponseVariance;
import fettle.uncertainty.PredictedBlock;
import java.util.Optional;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * What a block that is off the others looks like, as far as data can tell: swapped with another,
 * read with unusual scatter, or certified wrongly. Nothing of this is proof, and the words say so.
 */
record BlockDiagnosis(Evidence evidence, CandidateFit fit) {
  private static final double LEVEL = 0.01;

  /** Smaller probabilities hang on tails that no few readings show. */
  private static final double SMALLEST_SHOWN = 0.001;

  String of(PredictedBlock predicted) {
    Analysis analysis = evidence.analysis();
    Optional<Integer> partner = SwapSearch.of(analysis, fit).partnerOf(predicted.index());
    BlockResponse block = analysis.fittingBlocks().get(predicted.index());
    HardnessText text = HardnessText.of(evidence);
    if (partner.isPresent()) {
      BlockResponse other = analysis.fittingBlocks().get(partner.get());
      return "it looks like a swap with block "
          + other.block().id()
          + " (certified "
          + text.value(other.certificate().certified())
          + "), for with the two certified values exchanged both agree with the others";
    }
    Optional<String> scatter = scatter(block);
    return scatter.orElseGet(
        () ->
            "no other block fits an exchange and its readings repeat like the others', so its"
                + " certified value or the piece itself may differ from the family: "
                + text.value(predicted.predicted())
                + " is where the others see it");
  }

  /** The block's repeatability against that of all other blocks, F test at 1 %. */
  private Optional<String> scatter(BlockResponse block) {
    ResponseVariance variance = evidence.analysis().variance();
    double others = 0;
    double othersFreedom = 0;
    for (BlockResponse other : evidence.analysis().fittingBlocks()) {
      if (!other.block().id().equals(block.block().id())) {
        others += sum(other, variance);
        othersFreedom += freedom(other);
      }
    }
    double own = sum(block, variance);
    int ownFreedom = freedom(block);
    if (ownFreedom < 1 || othersFreedom < 1 || others == 0) {
      return Optional.empty();
    }
    double f = own / ownFreedom / (others / othersFreedom);
    double p = FDistribution.of(ownFreedom, othersFreedom).survivalProbability(f);
    return p < LEVEL
        ? Optional.of(
            "its readings scatter "
                + Figure.measured(Math.sqrt(f), 2)
                + " times as much as those of the other blocks (F = "
                + Figure.measured(f, 2)
                + " on "
                + ownFreedom
                + " and "
                + Figure.of(othersFreedom, 3)
                + " degrees of freedom, p "
                + (p < SMALLEST_SHOWN ? "< " + SMALLEST_SHOWN : "= " + Figure.of(p, 1))
                + "), so the readings may be at fault: look at face and contact")
        : Optional.empty();
  }

  private static double sum(BlockResponse block, ResponseVariance variance) {
    double size = variance.relative() ? block.mean() : 1;
    return block.withinRunSumOfSquares() / (size * size);
  }

  private static int freedom(BlockResponse block) {
    return block.count() - block.readingsPerRun().size();
  }
}
