package fettle.statistics;

/**
 * A mean, or a difference of two means, with its standard error and degrees of freedom.
 *
 * @param estimate the difference
 * @param standardError its standard error, above zero
 * @param degreesOfFreedom of the standard error, fractional for Welch
 * @see "B. L. Welch, The generalization of Student's problem when several different population
 *     variances are involved, Biometrika 34 (1947) 28"
 */
public record MeanDifference(double estimate, double standardError, double degreesOfFreedom) {
  /**
   * Checks the parts.
   *
   * @param estimate finite
   * @param standardError above zero
   * @param degreesOfFreedom above zero
   */
  public MeanDifference {
    Arguments.finite("estimate", estimate);
    Arguments.positive("standardError", standardError);
    Arguments.positive("degreesOfFreedom", degreesOfFreedom);
  }

  /**
   * Mean of one sample less a given number.
   *
   * @param mean mean of the sample
   * @param standardDeviation its s, above zero
   * @param count number of values, at least 2
   * @param reference the number
   * @return mean − reference
   */
  public static MeanDifference oneSample(
      double mean, double standardDeviation, int count, double reference) {
    Arguments.countAtLeast("count", count, 2);
    Arguments.positive("standardDeviation", standardDeviation);
    return new MeanDifference(mean - reference, standardDeviation / Math.sqrt(count), count - 1);
  }

  /**
   * Difference of two samples whose variances may differ (Welch).
   *
   * @param first summary of the first sample
   * @param second summary of the second, not both without scatter
   * @return first − second mean, Welch–Satterthwaite degrees of freedom
   */
  public static MeanDifference welch(SummaryStatistics first, SummaryStatistics second) {
    return welch(
        first.mean(),
        first.standardDeviation(),
        first.size(),
        second.mean(),
        second.standardDeviation(),
        second.size());
  }

  /**
   * Difference of two samples whose variances may differ, from their figures.
   *
   * @param mean1 mean of the first
   * @param sd1 standard deviation of the first
   * @param count1 its number of values, at least 2
   * @param mean2 mean of the second
   * @param sd2 standard deviation of the second
   * @param count2 its number of values, at least 2
   * @return first − second mean, Welch–Satterthwaite degrees of freedom
   */
  public static MeanDifference welch(
      double mean1, double sd1, int count1, double mean2, double sd2, int count2) {
    Arguments.countAtLeast("count1", count1, 2);
    Arguments.countAtLeast("count2", count2, 2);
    Arguments.notNegative("sd1", sd1);
    Arguments.notNegative("sd2", sd2);
    double v1 = sd1 * sd1 / count1;
    double v2 = sd2 * sd2 / count2;
    if (v1 + v2 == 0) {
      throw new IllegalArgumentException(
          "sd1 and sd2 are both 0: a difference of means needs values that differ");
    }
    double freedom = (v1 + v2) * (v1 + v2) / (v1 * v1 / (count1 - 1) + v2 * v2 / (count2 - 1));
    return new MeanDifference(mean1 - mean2, Math.sqrt(v1 + v2), freedom);
  }

  /**
   * Difference of two samples with one common variance.
   *
   * @param first summary of the first sample
   * @param second summary of the second, not both without scatter
   * @return first − second mean, n₁ + n₂ − 2 degrees of freedom
   */
  public static MeanDifference pooled(SummaryStatistics first, SummaryStatistics second) {
    PooledVariance s =
        PooledVariance.ofVariances(
            new double[] {first.variance(), second.variance()},
            new int[] {first.size(), second.size()});
    double u = s.standardDeviation() * Math.sqrt(1.0 / first.size() + 1.0 / second.size());
    return new MeanDifference(first.mean() - second.mean(), u, s.degreesOfFreedom());
  }

  /**
   * Mean difference of pairs.
   *
   * @param first values, at least 2
   * @param second their partners, in the same order
   * @return mean of first − second, n − 1 degrees of freedom
   */
  public static MeanDifference paired(double[] first, double[] second) {
    Arguments.sameLength("first", first.length, "second", second.length);
    Arguments.finite("first", first);
    Arguments.finite("second", second);
    double[] differences = new double[first.length];
    for (int i = 0; i < first.length; i++) {
      differences[i] = first[i] - second[i];
    }
    SummaryStatistics s = SummaryStatistics.of(differences);
    if (s.variance() == 0) {
      throw Arguments.noSpread("differences", first.length, differences[0], "a paired comparison");
    }
    return oneSample(s.mean(), s.standardDeviation(), s.size(), 0);
  }

  /**
   * Student's t against a hypothetical difference.
   *
   * @param hypothetical the difference supposed
   * @return (estimate − hypothetical)/standard error
   */
  public double t(double hypothetical) {
    return (estimate - hypothetical) / standardError;
  }

  /**
   * Probability of a t as far from zero on either side.
   *
   * @param hypothetical the difference supposed
   * @return two-sided p
   */
  public double pValue(double hypothetical) {
    return Quantiles.tTwoTails(t(hypothetical), degreesOfFreedom);
  }

  /**
   * Half width of the symmetric interval.
   *
   * @param confidence e.g. 0.95, strictly between 0 and 1
   * @return t times standard error
   */
  public double halfWidth(double confidence) {
    Arguments.probability("confidence", confidence);
    return Quantiles.upperT(0.5 * (1 - confidence), degreesOfFreedom) * standardError;
  }
}
