package fettle.statistics;

/**
 * Cochran's test for one variance that is too large among p.
 *
 * <p>C = s²_max / Σ s². For p variances of n values each the critical value is
 *
 * <pre>  1 / (1 + (p − 1)/F),   F exceeded with probability α/p on n − 1 and (p − 1)(n − 1) d.f.
 * </pre>
 *
 * With unequal n (ν_i = n_i − 1) the variances are weighed by their degrees of freedom, G_j = ν_j
 * s_j² / Σ ν_i s_i², and each has its own beta distribution ('t Lam); for equal n this is C itself.
 * ISO 5725-2 uses C and the n of most cells instead; {@link #statistic} is always C, {@link
 * #pValue} and {@link #index} follow the weighed form, and {@link #balanced} says whether they can
 * differ.
 *
 * <p>Cost: O(p), no allocation but the result.
 *
 * @param cells number of variances p
 * @param index which variance is suspected: the smallest p value
 * @param statistic C of the largest variance
 * @param balanced all variances rest on the same number of values
 * @param pValue probability of so extreme a variance (Bonferroni bound, sharp when small), at most
 *     1
 * @see "ISO 5725-2:1994, 7.3.3 and Table 4"
 * @see "R. U. E. 't Lam, Scrutiny of variance results for outliers: Cochran's test optimized, Anal.
 *     Chim. Acta 659 (2010) 68"
 */
public record CochranVariance(
    int cells, int index, double statistic, boolean balanced, double pValue) {
  private static final String TEST = "Cochran's test";

  /**
   * Tests p variances.
   *
   * @param variances s² of each cell, finite and not negative, not all zero; at least 2
   * @param counts number of values in each cell, at least 2
   * @return the suspected cell, C and p
   * @throws IllegalArgumentException if lengths differ, a value is out of range, or all are zero
   */
  public static CochranVariance test(double[] variances, int[] counts) {
    Arguments.atLeast("variances", variances.length, 2, TEST);
    Arguments.sameLength("variances", variances.length, "counts", counts.length);
    double sum = 0;
    double weighed = 0;
    double largest = 0;
    int freedom = 0;
    boolean balanced = true;
    for (int i = 0; i < variances.length; i++) {
      Arguments.notNegative("variances[" + i + "]", variances[i]);
      Arguments.countAtLeast("counts[" + i + "]", counts[i], 2);
      sum += variances[i];
      weighed += (counts[i] - 1) * variances[i];
      largest = Math.max(largest, variances[i]);
      freedom += counts[i] - 1;
      balanced &= counts[i] == counts[0];
    }
    if (sum == 0) {
      throw Arguments.noSpread("variances", variances.length, 0, TEST);
    }
    int suspect = 0;
    double p = Double.POSITIVE_INFINITY;
    for (int i = 0; i < variances.length; i++) {
      // among equal cells the largest variance has the smallest p: one tail is enough
      if (!balanced || variances[i] == largest) {
        double g = (counts[i] - 1) * variances[i] / weighed;
        double tail = Quantiles.betaTail(g, 0.5 * (counts[i] - 1), 0.5 * (freedom - counts[i] + 1));
        if (tail < p) {
          p = tail;
          suspect = i;
        }
      }
    }
    return new CochranVariance(
        variances.length, suspect, largest / sum, balanced, Math.min(1, variances.length * p));
  }

  /**
   * Critical value of C for cells of equal size.
   *
   * @param cells number of variances p, at least 2
   * @param count values in each cell, at least 2
   * @param alpha level, strictly between 0 and 1
   * @return the C exceeded with probability alpha
   */
  public static double criticalValue(int cells, int count, double alpha) {
    Arguments.countAtLeast("cells", cells, 2);
    Arguments.countAtLeast("count", count, 2);
    Arguments.probability("alpha", alpha);
    double f = Quantiles.upperF(alpha / cells, count - 1.0, (cells - 1.0) * (count - 1.0));
    return 1 / (1 + (cells - 1) / f);
  }
}
