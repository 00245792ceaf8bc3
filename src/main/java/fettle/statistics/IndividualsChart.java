package fettle.statistics;

/**
 * Shewhart chart of single values, its σ from the mean moving range of two.
 *
 * @param mean mean of the values
 * @param meanMovingRange mean of |x_i − x_{i−1}|
 * @param d2 mean range of two normal values in σ: exactly 2/√π = 1.12838, in tables 1.128
 * @see "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2"
 */
public record IndividualsChart(double mean, double meanMovingRange, double d2) {
  /** Mean range of two normal values. */
  public static final double EXACT_D2 = 2 / Math.sqrt(Math.PI);

  /** D4 for two values: 1 + 3 √(1 − 2/π)·√2 / (2/√π). */
  private static final double RANGE_UPPER = 1 + 3 * Math.sqrt(2 - 4 / Math.PI) / EXACT_D2;

  /**
   * With the exact d2.
   *
   * @param values at least 2 finite values in their order
   * @return the chart
   */
  public static IndividualsChart of(double[] values) {
    return of(values, EXACT_D2);
  }

  /**
   * With a given d2, e.g. the rounded 1.128.
   *
   * @param values at least 2 finite values in their order
   * @param d2 above zero
   * @return the chart
   */
  public static IndividualsChart of(double[] values, double d2) {
    Arguments.positive("d2", d2);
    return new IndividualsChart(
        SummaryStatistics.of(values).mean(), Moments.mean(movingRanges(values)), d2);
  }

  /**
   * Differences between successive values.
   *
   * @param values at least 2 finite values
   * @return |x_i − x_{i−1}|, one fewer than values
   */
  public static double[] movingRanges(double[] values) {
    Arguments.atLeast("values", values.length, 2, "a moving range");
    Arguments.finite("values", values);
    double[] ranges = new double[values.length - 1];
    for (int i = 1; i < values.length; i++) {
      ranges[i - 1] = Math.abs(values[i] - values[i - 1]);
    }
    return ranges;
  }

  /**
   * Standard deviation behind the limits.
   *
   * @return mean moving range / d2
   */
  public double standardDeviation() {
    return meanMovingRange / d2;
  }

  /**
   * Limits of the values.
   *
   * @return mean ± three standard deviations
   */
  public ControlLimits limits() {
    double half = 3 * standardDeviation();
    return new ControlLimits(mean - half, mean, mean + half);
  }

  /**
   * Limits of the moving ranges.
   *
   * @return 0 to D4 = 3.267 mean moving ranges
   */
  public ControlLimits movingRangeLimits() {
    return new ControlLimits(0, meanMovingRange, RANGE_UPPER * meanMovingRange);
  }
}
