package fettle.coverage;

import fettle.fit.CurveFit;
import fettle.fit.CurveSolver;
import fettle.fit.FitFailedException;
import fettle.fit.ModelId;
import fettle.fit.Points;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Coverage of the curve's 95 % interval where the uncertainties are as stated: blocks on a known
 * curve, certified values and responses drawn with exactly the covariance that the fit is told.
 */
final class PairsCoverage {
  private static final double NORMAL_95 = 1.959963984540054;

  private PairsCoverage() {}

  /** A law h(r) that a model can represent. */
  interface Law {
    double at(double response);
  }

  static Law lawOf(String model) {
    return switch (model) {
      case "polynomial-1" -> r -> 520 - 0.12 * r;
      case "polynomial-2" -> r -> 1000 - 0.44 * r + 0.00005 * r * r;
      case "power" -> r -> 200 * StrictMath.pow(r / 2400, -2.1);
      case "log-polynomial-2" ->
          r -> {
            double t = StrictMath.log(r / 2400);
            return 200 * StrictMath.exp(-2.1 * t + 0.5 * t * t);
          };
      default -> throw new IllegalArgumentException(model);
    };
  }

  /**
   * Mean coverage over five responses across the range.
   *
   * @return share of intervals that hold the truth
   */
  static double coverage(String model, int blocks, boolean shared, int campaigns, long seed)
      throws FitFailedException {
    UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
    var normal = ZigguratSampler.NormalizedGaussian.of(random);
    Law law = lawOf(model);
    ModelId id = new ModelId(model);
    double low = 1900;
    double high = 3000;
    int held = 0;
    for (int c = 0; c < campaigns; c++) {
      double[] r = new double[blocks];
      double[] h = new double[blocks];
      double[] vr = new double[blocks];
      double[] vh = new double[blocks];
      double[] common = new double[blocks];
      double machine = normal.sample();
      for (int i = 0; i < blocks; i++) {
        double xi = low + i * (high - low) / (blocks - 1);
        double truth = law.at(xi);
        double ur = 0.003 * xi;
        double uh = 0.007 * truth;
        common[i] = shared ? 0.008 * truth : 0;
        r[i] = xi + ur * normal.sample();
        h[i] = truth + uh * normal.sample() + common[i] * machine;
        vr[i] = ur * ur;
        vh[i] = uh * uh;
      }
      double[][] effects = shared ? new double[][] {common} : new double[0][];
      CurveFit fit = CurveSolver.fit(id, Points.of(r, h, vr, vh, new double[0][], effects));
      for (int k = 0; k < 5; k++) {
        double at = low + (0.05 + 0.225 * k) * (high - low);
        double error = fit.model().value(at, fit.beta()) - law.at(at);
        if (Math.abs(error) <= NORMAL_95 * Math.sqrt(fit.varianceOfCurveAt(at))) {
          held++;
        }
      }
    }
    return held / (5.0 * campaigns);
  }
}
