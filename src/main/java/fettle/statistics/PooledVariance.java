package fettle.statistics;

/**
 * One variance from several groups: Σ ν_i s_i² / Σ ν_i.
 *
 * @param variance pooled s²
 * @param degreesOfFreedom Σ ν_i
 * @see "NIST/SEMATECH e-Handbook of Statistical Methods, 2.3.3.3.4"
 */
public record PooledVariance(double variance, int degreesOfFreedom) {
  /**
   * From the values of each group; groups of one value contribute nothing.
   *
   * @param groups finite values, at least one group with 2
   * @return pooled variance and its degrees of freedom
   */
  public static PooledVariance of(double[][] groups) {
    Arguments.finite("groups", groups);
    double squares = 0;
    int freedom = 0;
    for (double[] group : groups) {
      if (group.length > 1) {
        squares += Moments.squaredDeviations(group, Moments.mean(group));
        freedom += group.length - 1;
      }
    }
    if (freedom == 0) {
      throw new IllegalArgumentException(
          "none of the " + groups.length + " groups has 2 values: they give no variance");
    }
    return new PooledVariance(squares / freedom, freedom);
  }

  /**
   * From the variance of each group.
   *
   * @param variances s² of each group, not negative
   * @param counts values in each group; a group of one value contributes nothing
   * @return pooled variance and its degrees of freedom
   */
  public static PooledVariance ofVariances(double[] variances, int[] counts) {
    Arguments.sameLength("variances", variances.length, "counts", counts.length);
    double squares = 0;
    int freedom = 0;
    for (int i = 0; i < variances.length; i++) {
      Arguments.countAtLeast("counts[" + i + "]", counts[i], 1);
      if (counts[i] > 1) {
        Arguments.notNegative("variances[" + i + "]", variances[i]);
        squares += (counts[i] - 1) * variances[i];
        freedom += counts[i] - 1;
      }
    }
    if (freedom == 0) {
      throw new IllegalArgumentException(
          "none of the " + counts.length + " groups has 2 values: they give no variance");
    }
    return new PooledVariance(squares / freedom, freedom);
  }

  /**
   * Pooled standard deviation.
   *
   * @return root of the variance
   */
  public double standardDeviation() {
    return Math.sqrt(variance);
  }
}
