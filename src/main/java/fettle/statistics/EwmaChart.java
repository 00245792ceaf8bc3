package fettle.statistics;

/**
 * Exponentially weighted moving average: z_t = λ x_t + (1 − λ) z_{t−1}, z_0 the target.
 *
 * <pre>  limits  target ± L σ √( λ/(2 − λ) · (1 − (1 − λ)^{2t}) )</pre>
 *
 * widening to the constant limits as t grows.
 *
 * @param target in-control mean
 * @param standardDeviation σ of one value, above zero
 * @param lambda weight of the newest value, above 0, at most 1
 * @param width L, above zero
 * @see "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4"
 * @see "J. M. Lucas, M. S. Saccucci, Exponentially weighted moving average control schemes,
 *     Technometrics 32 (1990) 1"
 */
public record EwmaChart(double target, double standardDeviation, double lambda, double width) {
  /**
   * Checks the settings.
   *
   * @param target in-control mean
   * @param standardDeviation σ of one value
   * @param lambda weight of the newest value
   * @param width L
   */
  public EwmaChart {
    Arguments.finite("target", target);
    Arguments.positive("standardDeviation", standardDeviation);
    Arguments.positive("width", width);
    checkLambda(lambda);
  }

  static void checkLambda(double lambda) {
    if (!(lambda > 0 && lambda <= 1)) {
      throw new IllegalArgumentException(
          "lambda is " + lambda + ": it must be above 0 and at most 1");
    }
  }

  /**
   * The charted averages.
   *
   * @param values finite values in their order
   * @return z_1 … z_n
   */
  public double[] averages(double[] values) {
    Arguments.finite("values", values);
    double[] z = new double[values.length];
    double last = target;
    for (int i = 0; i < values.length; i++) {
      last = lambda * values[i] + (1 - lambda) * last;
      z[i] = last;
    }
    return z;
  }

  /**
   * Limits after many values.
   *
   * @return the constant limits
   */
  public ControlLimits limits() {
    return about(Math.sqrt(lambda / (2 - lambda)));
  }

  /**
   * Limits at one value.
   *
   * @param count number of values so far, at least 1
   * @return narrower than the constant limits
   */
  public ControlLimits limitsAt(int count) {
    Arguments.countAtLeast("count", count, 1);
    double faded = StrictMath.pow(1 - lambda, 2.0 * count);
    return about(Math.sqrt(lambda / (2 - lambda) * (1 - faded)));
  }

  private ControlLimits about(double share) {
    double half = width * standardDeviation * share;
    return new ControlLimits(target - half, target, target + half);
  }

  /**
   * Average run length until the constant limits are left, from the target on.
   *
   * @param shift true mean less target, in the unit of the values
   * @return expected number of values
   */
  public double averageRunLength(double shift) {
    return AverageRunLength.ewma(lambda, width, shift / standardDeviation);
  }
}
