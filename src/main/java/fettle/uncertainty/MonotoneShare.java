package fettle.uncertainty;

import fettle.fit.CurveFit;
import fettle.fit.ResponseModel;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.SharedStateContinuousSampler;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;

/** Share of parameter draws from the posterior whose curve is proven strictly monotone. */
public final class MonotoneShare {
  private MonotoneShare() {}

  /**
   * Draws and counts.
   *
   * @param nodes posterior of the between-block scatter with its fits
   * @param low lower response
   * @param high upper response
   * @param draws number of draws, at least 1
   * @param seed seed; the same seed gives the same share
   * @return share between 0 and 1
   */
  public static double of(
      List<BetweenBlockScatter.Node> nodes, double low, double high, int draws, long seed) {
    UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
    SharedStateContinuousSampler normal = ZigguratSampler.NormalizedGaussian.of(random);
    int monotone = 0;
    int drawn = 0;
    double cumulative = 0;
    for (BetweenBlockScatter.Node node : nodes) {
      cumulative += node.weight();
      int upTo = (int) Math.round(cumulative * draws);
      CurveFit fit = node.fit();
      double[] root = CovarianceRoot.of(fit.covariance(), fit.parameterCount());
      ResponseModel model = fit.model();
      double[] beta = new double[fit.parameterCount()];
      for (; drawn < upTo; drawn++) {
        CovarianceRoot.draw(fit.beta(), root, normal, beta);
        if (model.monotonicity(beta, low, high).isProven()) {
          monotone++;
        }
      }
    }
    return monotone / (double) drawn;
  }
}
