package fettle.calibration;

import fettle.curve.RunEffects;
import java.util.List;

/**
 * How responses scatter in a campaign.
 *
 * @param relative whether the standard deviations below are fractions of the response
 * @param repeatability pooled within-run standard deviation of one reading σ_e
 * @param degreesOfFreedom of it
 * @param blockRun standard deviation σ_ab of the block × run interaction
 * @param runs runs, in order of name
 * @param run σ_a in force, 0 where neither estimated nor stated
 * @param runEstimated whether σ_a was estimated, which takes four runs
 * @param runNodes posterior of σ_a
 * @param constantFits share: homogeneity statistic of the constant model (Bartlett), smaller is
 *     better
 * @param relativeFits homogeneity statistic of the relative model
 */
public record ResponseVariance(
    boolean relative,
    double repeatability,
    double degreesOfFreedom,
    double blockRun,
    List<String> runs,
    double run,
    boolean runEstimated,
    List<RunEffects.Node> runNodes,
    double constantFits,
    double relativeFits) {
  /** Copies. */
  public ResponseVariance {
    runs = List.copyOf(runs);
    runNodes = List.copyOf(runNodes);
  }

  /** What one unit of a standard deviation here is at a response. */
  double sizeAt(double response) {
    return relative ? Math.abs(response) : 1;
  }
}
