package fettle.statistics;

/**
 * Shewhart charts of means, ranges and standard deviations of subgroups of equal size.
 *
 * <p>Made from the preliminary subgroups (phase 1); later means, ranges and standard deviations are
 * then held against its limits.
 *
 * @see "D. C. Montgomery, Introduction to Statistical Quality Control, 6.2 and 6.3"
 */
public final class SubgroupChart {
  private final double[] means;
  private final double[] ranges;
  private final double[] scatters;
  private final ControlFactors factors;

  private SubgroupChart(double[][] subgroups, ControlFactors factors) {
    this.factors = factors;
    means = new double[subgroups.length];
    ranges = new double[subgroups.length];
    scatters = new double[subgroups.length];
    for (int i = 0; i < subgroups.length; i++) {
      SummaryStatistics s = SummaryStatistics.of(subgroups[i]);
      means[i] = s.mean();
      ranges[i] = s.largest() - s.smallest();
      scatters[i] = s.standardDeviation();
    }
  }

  /**
   * With computed factors.
   *
   * @param subgroups at least 2 subgroups of one size, at least 2 finite values each
   * @return the charts
   */
  public static SubgroupChart of(double[][] subgroups) {
    check(subgroups);
    return new SubgroupChart(subgroups, SubgroupConstants.of(subgroups[0].length).factors());
  }

  /**
   * With given factors, e.g. the rounded ones of a table.
   *
   * @param subgroups at least 2 subgroups of one size, at least 2 finite values each
   * @param factors factors for that size
   * @return the charts
   */
  public static SubgroupChart of(double[][] subgroups, ControlFactors factors) {
    check(subgroups);
    return new SubgroupChart(subgroups, factors);
  }

  private static void check(double[][] subgroups) {
    if (subgroups.length < 2) {
      throw new IllegalArgumentException(
          "subgroups has " + subgroups.length + " subgroups: a chart needs at least 2");
    }
    for (int i = 0; i < subgroups.length; i++) {
      Arguments.atLeast("subgroups[" + i + "]", subgroups[i].length, 2, "a subgroup chart");
      Arguments.sameLength(
          "subgroups[" + i + "]", subgroups[i].length, "subgroups[0]", subgroups[0].length);
    }
    Arguments.finite("subgroups", subgroups);
  }

  /**
   * Means of the subgroups.
   *
   * @return a copy
   */
  public double[] means() {
    return means.clone();
  }

  /**
   * Ranges of the subgroups.
   *
   * @return a copy
   */
  public double[] ranges() {
    return ranges.clone();
  }

  /**
   * Standard deviations of the subgroups.
   *
   * @return a copy
   */
  public double[] standardDeviations() {
    return scatters.clone();
  }

  /**
   * Limits of the means, by the mean range.
   *
   * @return grand mean ± A2 times mean range
   */
  public ControlLimits meanLimitsByRange() {
    return about(Moments.mean(means), factors.meanFromRange() * Moments.mean(ranges));
  }

  /**
   * Limits of the means, by the mean standard deviation.
   *
   * @return grand mean ± A3 times mean standard deviation
   */
  public ControlLimits meanLimitsByScatter() {
    return about(Moments.mean(means), factors.meanFromScatter() * Moments.mean(scatters));
  }

  private static ControlLimits about(double centre, double half) {
    return new ControlLimits(centre - half, centre, centre + half);
  }

  /**
   * Limits of the ranges.
   *
   * @return D3 and D4 times mean range
   */
  public ControlLimits rangeLimits() {
    double centre = Moments.mean(ranges);
    return new ControlLimits(factors.rangeLower() * centre, centre, factors.rangeUpper() * centre);
  }

  /**
   * Limits of the standard deviations.
   *
   * @return B3 and B4 times mean standard deviation
   */
  public ControlLimits scatterLimits() {
    double centre = Moments.mean(scatters);
    return new ControlLimits(
        factors.scatterLower() * centre, centre, factors.scatterUpper() * centre);
  }
}
