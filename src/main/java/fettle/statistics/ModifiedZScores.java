package fettle.statistics;

/**
 * Robust z scores: M_i = 0.6745 (x_i − median)/MAD, MAD the median absolute deviation.
 *
 * <p>Values with |M| above 3.5 are labelled as possible outliers.
 *
 * @see "B. Iglewicz, D. C. Hoaglin, How to Detect and Handle Outliers (ASQC, 1993)"
 */
public final class ModifiedZScores {
  /** The authors' limit for |M|. */
  public static final double LIMIT = 3.5;

  /** Upper quartile of the standard normal distribution as the authors round it. */
  private static final double QUARTILE = 0.6745;

  private ModifiedZScores() {}

  /**
   * The scores.
   *
   * @param values at least 3 finite values, fewer than half of them equal to the median
   * @return one score for each value
   * @throws IllegalArgumentException if a value is not finite or the MAD is zero
   */
  public static double[] of(double[] values) {
    Arguments.atLeast("values", values.length, 3, "a robust z score");
    Arguments.finite("values", values);
    double median = OrderStatistics.median(values);
    double[] scores = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      scores[i] = Math.abs(values[i] - median);
    }
    double mad = OrderStatistics.median(scores);
    if (mad == 0) {
      throw new IllegalArgumentException(
          "half or more of the "
              + values.length
              + " values are "
              + median
              + ": their median absolute deviation is 0 and gives no scale");
    }
    for (int i = 0; i < values.length; i++) {
      scores[i] = QUARTILE * (values[i] - median) / mad;
    }
    return scores;
  }
}
