package fettle.curve;

import java.util.List;

/**
 * Effects of measuring runs (day, operator, set-up) that shift all readings of a run together.
 *
 * @param relative whether the standard deviation is a fraction of the response
 * @param standardDeviation reference value σ_a; 0 where not estimable and not stated
 * @param estimated whether it was estimated from the campaign's own runs; else it is a Type B value
 * @param deltaBeta for each run of the campaign, what a run effect of size 1 does to the parameters
 * @param nodes posterior of σ_a
 */
public record RunEffects(
    boolean relative,
    double standardDeviation,
    boolean estimated,
    List<double[]> deltaBeta,
    List<Node> nodes) {
  /**
   * One value of σ_a with its posterior weight.
   *
   * @param weight posterior probability
   * @param standardDeviation σ_a
   */
  public record Node(double weight, double standardDeviation) {}

  /** Copies the lists. */
  public RunEffects {
    deltaBeta = List.copyOf(deltaBeta);
    nodes = List.copyOf(nodes);
  }

  /**
   * The effect of one run at a response, for a run effect of size 1.
   *
   * @param response in the response unit
   * @return the response itself where relative, else 1
   */
  public double loadingAt(double response) {
    return relative ? response : 1;
  }
}
