package fettle.statistics;

/**
 * Bartlett's test for equal variances of normal values.
 *
 * <pre>
 *   T = [ν ln s_p² − Σ ν_i ln s_i²] / [1 + (Σ 1/ν_i − 1/ν)/(3(k − 1))],  χ² on k − 1 d.f.
 * </pre>
 *
 * @param statistic T
 * @param degreesOfFreedom k − 1
 * @see "M. S. Bartlett, Properties of sufficiency and statistical tests, Proc. R. Soc. A 160 (1937)
 *     268"
 */
public record BartlettTest(double statistic, int degreesOfFreedom) {
  /**
   * Tests groups of values.
   *
   * @param groups at least 2 groups of at least 2 finite values that differ
   * @return the statistic
   */
  public static BartlettTest of(double[][] groups) {
    double[] variances = new double[groups.length];
    int[] counts = new int[groups.length];
    Arguments.finite("groups", groups);
    for (int i = 0; i < groups.length; i++) {
      Arguments.atLeast("groups[" + i + "]", groups[i].length, 2, "Bartlett's test");
      if (Moments.allEqual(groups[i])) {
        throw Arguments.noSpread(
            "values of groups[" + i + "]", groups[i].length, groups[i][0], "Bartlett's test");
      }
      variances[i] = SummaryStatistics.of(groups[i]).variance();
      counts[i] = groups[i].length;
    }
    return ofVariances(variances, counts);
  }

  /**
   * Tests variances.
   *
   * @param variances at least 2, each above zero
   * @param counts values behind each, at least 2
   * @return the statistic
   */
  public static BartlettTest ofVariances(double[] variances, int[] counts) {
    Arguments.atLeast("variances", variances.length, 2, "Bartlett's test");
    Arguments.positive("variances", variances);
    PooledVariance pooled = PooledVariance.ofVariances(variances, counts);
    double sum = 0;
    double inverse = 0;
    for (int i = 0; i < variances.length; i++) {
      Arguments.countAtLeast("counts[" + i + "]", counts[i], 2);
      int freedom = counts[i] - 1;
      // of the ratio: the logarithms of small variances do not cancel each other's digits
      sum -= freedom * StrictMath.log(variances[i] / pooled.variance());
      inverse += 1.0 / freedom;
    }
    int k = variances.length - 1;
    double correction = 1 + (inverse - 1.0 / pooled.degreesOfFreedom()) / (3 * k);
    return new BartlettTest(sum / correction, k);
  }

  /**
   * p of the statistic.
   *
   * @return upper tail of χ²
   */
  public double pValue() {
    return Quantiles.chiSquaredTail(statistic, degreesOfFreedom);
  }
}
