package fettle.uncertainty;

import fettle.fit.CurveFit;
import fettle.fit.FitFailedException;
import fettle.fit.Points;
import fettle.fit.Refitter;
import fettle.fit.ResponseModel;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;

/**
 * One Monte Carlo trial of a calibration: draws certified hardnesses from N(H, V_h) and responses
 * from N(r̄, V_r), refits the curve, and evaluates it on a grid of responses.
 *
 * <p>Where no uncertainties are stated, the residual variance s² is known from ν = m − p degrees of
 * freedom only: a trial first draws the variance, s²ν/χ²_ν, then the hardnesses from it.
 */
public final class CurveTrial implements MonteCarlo.Trial {
  private final Points points;
  private final ResponseModel model;
  private final Refitter refitter;
  private final double[] grid;
  private final double[] responses;
  private final double[] hardnesses;
  private final double[] beta;
  private final double[] responseDeviation;
  private final double[] hardnessDeviation;
  private final double[][] responseEffects;
  private final double[][] hardnessEffects;
  private final double residualDeviation;
  private final int degreesOfFreedom;

  /**
   * A trial.
   *
   * @param points the points
   * @param fit the fit of them
   * @param grid responses at which the curve is wanted
   */
  public CurveTrial(Points points, CurveFit fit, double[] grid) {
    this.points = points;
    this.model = fit.model();
    this.refitter = new Refitter(points, fit);
    this.grid = grid.clone();
    int m = points.size();
    this.responses = new double[m];
    this.hardnesses = new double[m];
    this.beta = new double[fit.parameterCount()];
    this.responseDeviation = roots(points.responseVariances());
    this.hardnessDeviation = roots(points.hardnessVariances());
    this.responseEffects = new double[points.responseEffectCount()][];
    this.hardnessEffects = new double[points.hardnessEffectCount()][];
    java.util.Arrays.setAll(responseEffects, points::responseEffect);
    java.util.Arrays.setAll(hardnessEffects, points::hardnessEffect);
    this.degreesOfFreedom = fit.degreesOfFreedom();
    this.residualDeviation =
        fit.uncertaintiesStated() ? 0 : Math.sqrt(fit.chiSquared() / degreesOfFreedom);
  }

  private static double[] roots(double[] variances) {
    double[] roots = new double[variances.length];
    for (int i = 0; i < roots.length; i++) {
      roots[i] = Math.sqrt(variances[i]);
    }
    return roots;
  }

  @Override
  public void run(UniformRandomProvider random, double[] outputs) throws FitFailedException {
    var normal = ZigguratSampler.NormalizedGaussian.of(random);
    double common = 0;
    if (residualDeviation > 0) {
      double chiSquared = 0;
      for (int k = 0; k < degreesOfFreedom; k++) {
        double z = normal.sample();
        chiSquared += z * z;
      }
      common = residualDeviation * Math.sqrt(degreesOfFreedom / chiSquared);
    }
    for (int i = 0; i < responses.length; i++) {
      responses[i] = points.response(i);
      if (responseDeviation[i] > 0) {
        responses[i] += responseDeviation[i] * normal.sample();
      }
      hardnesses[i] =
          points.hardness(i) + (common > 0 ? common : hardnessDeviation[i]) * normal.sample();
    }
    addEffects(responseEffects, responses, normal);
    addEffects(hardnessEffects, hardnesses, normal);
    refitter.refit(responses, hardnesses, beta);
    for (int k = 0; k < grid.length; k++) {
      outputs[k] = model.value(grid[k], beta);
    }
  }

  private static void addEffects(
      double[][] effects,
      double[] values,
      org.apache.commons.rng.sampling.distribution.SharedStateContinuousSampler normal) {
    for (double[] effect : effects) {
      double z = normal.sample();
      for (int i = 0; i < values.length; i++) {
        values[i] += effect[i] * z;
      }
    }
  }
}
