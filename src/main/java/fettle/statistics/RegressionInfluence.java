package fettle.statistics;

import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Influence of each observation on a linear regression, all from residuals e and leverages h.
 *
 * <pre>
 *   internally studentized  t_i = e_i / (s √(1 − h_i))
 *   externally studentized  r_i = e_i / (s_(i) √(1 − h_i)),  s²_(i) = (RSS − e_i²/(1 − h_i))/(n − p − 1)
 *   Cook's distance         D_i = t_i² h_i / ((1 − h_i) p)
 *   DFFITS                  r_i √(h_i/(1 − h_i))
 *   left-out error          e_i / (1 − h_i),   PRESS = Σ (left-out error)²
 * </pre>
 *
 * <p>Cost: O(n). Fails when an observation alone determines a coefficient (h = 1).
 *
 * @see "R. D. Cook, S. Weisberg, Residuals and Influence in Regression (1982)"
 */
public final class RegressionInfluence {
  private final LinearRegression fit;
  private final double[] e;
  private final double[] h;

  private RegressionInfluence(LinearRegression fit) {
    this.fit = fit;
    this.e = fit.residuals();
    this.h = fit.leverages();
  }

  /**
   * Of a fit.
   *
   * @param fit a regression with at least 2 degrees of freedom and residuals that are not all zero
   * @return its influence measures
   */
  public static RegressionInfluence of(LinearRegression fit) {
    if (fit.degreesOfFreedom() < 2) {
      throw new IllegalArgumentException(
          "the regression has "
              + fit.degreesOfFreedom()
              + " degrees of freedom: influence needs at least 2");
    }
    if (fit.residualSumOfSquares() == 0) {
      throw new IllegalArgumentException(
          "all residuals of the regression are 0: nothing can be studentized");
    }
    double[] h = fit.leverages();
    for (int i = 0; i < h.length; i++) {
      if (h[i] > 1 - 1e-12) {
        throw new IllegalArgumentException(
            "observation " + i + " has leverage 1: it alone determines a coefficient");
      }
    }
    return new RegressionInfluence(fit);
  }

  /**
   * Internally studentized residuals.
   *
   * @return one for each observation
   */
  public double[] internallyStudentized() {
    double s = fit.residualStandardDeviation();
    return each(i -> e[i] / (s * Math.sqrt(1 - h[i])));
  }

  /**
   * Externally studentized residuals: s without the observation.
   *
   * @return one for each observation
   */
  public double[] externallyStudentized() {
    double rss = fit.residualSumOfSquares();
    int freedom = fit.degreesOfFreedom() - 1;
    return each(
        i -> {
          double left = Math.max(0, rss - e[i] * e[i] / (1 - h[i])) / freedom;
          return e[i] / Math.sqrt(left * (1 - h[i]));
        });
  }

  /**
   * Cook's distances.
   *
   * @return one for each observation
   */
  public double[] cooksDistances() {
    double[] t = internallyStudentized();
    return each(i -> t[i] * t[i] * h[i] / ((1 - h[i]) * fit.parameters()));
  }

  /**
   * Change of each fitted value by leaving its observation out, in its standard errors.
   *
   * @return one for each observation
   */
  public double[] dffits() {
    double[] r = externallyStudentized();
    return each(i -> r[i] * Math.sqrt(h[i] / (1 - h[i])));
  }

  /**
   * Errors of predicting each observation from the others.
   *
   * @return one for each observation
   */
  public double[] leftOutErrors() {
    return each(i -> e[i] / (1 - h[i]));
  }

  /**
   * Sum of squared left-out errors.
   *
   * @return PRESS
   */
  public double press() {
    double sum = 0;
    for (double error : leftOutErrors()) {
      sum += error * error;
    }
    return sum;
  }

  /**
   * Root mean square of the left-out errors.
   *
   * @return √(PRESS/n)
   */
  public double leftOutRms() {
    return Math.sqrt(press() / fit.size());
  }

  /**
   * Share of the variation predicted with each observation left out.
   *
   * @return 1 − PRESS/total sum of squares
   */
  public double predictedRSquared() {
    return 1 - press() / fit.totalSumOfSquares();
  }

  private double[] each(IntToDoubleFunction measure) {
    return IntStream.range(0, e.length).mapToDouble(measure).toArray();
  }
}
