package fettle.statistics;

/**
 * Spearman's rank correlation: Pearson's correlation of the ranks, ties sharing their mean rank.
 *
 * <p>p is exact, by all orders of one side, up to 9 pairs; beyond by Student's t on n − 2 degrees
 * of freedom.
 *
 * @param size number of pairs
 * @param rho −1 to 1
 * @param pValue two-sided: probability of so large a |ρ| without dependence
 * @see "M. G. Kendall, Rank Correlation Methods (1948)"
 */
public record SpearmanCorrelation(int size, double rho, double pValue) {
  private static final int EXACT = 9;
  private static final String TEST = "a rank correlation";

  /**
   * Of pairs.
   *
   * @param x at least 3 finite values that differ
   * @param y their partners, which differ
   * @return ρ and p
   */
  public static SpearmanCorrelation of(double[] x, double[] y) {
    Arguments.sameLength("x", x.length, "y", y.length);
    Arguments.atLeast("x", x.length, 3, TEST);
    Arguments.finite("x", x);
    Arguments.finite("y", y);
    if (Moments.allEqual(x)) {
      throw Arguments.noSpread("x", x.length, x[0], TEST);
    }
    if (Moments.allEqual(y)) {
      throw Arguments.noSpread("y", y.length, y[0], TEST);
    }
    double[] a = OrderStatistics.ranks(x);
    double[] b = OrderStatistics.ranks(y);
    int n = a.length;
    double centre = 0.5 * (n + 1);
    double aa = 0;
    double bb = 0;
    double ab = 0;
    for (int i = 0; i < n; i++) {
      a[i] -= centre;
      b[i] -= centre;
      aa += a[i] * a[i];
      bb += b[i] * b[i];
      ab += a[i] * b[i];
    }
    double rho = Math.max(-1, Math.min(1, ab / Math.sqrt(aa * bb)));
    double p;
    if (n <= EXACT) {
      long[] counts = new long[2];
      // quarter ranks are exact in binary: equal sums compare equal
      count(a, b, 0, 0, Math.abs(ab), counts);
      p = counts[0] / (double) counts[1];
    } else if (Math.abs(rho) == 1) {
      p = 0;
    } else {
      p = Quantiles.tTwoTails(rho * Math.sqrt((n - 2) / ((1 - rho) * (1 + rho))), n - 2);
    }
    return new SpearmanCorrelation(n, rho, p);
  }

  /** Goes through all orders of b from place on. */
  private static void count(
      double[] a, double[] b, int place, double sum, double observed, long[] counts) {
    if (place == a.length) {
      counts[1]++;
      if (Math.abs(sum) >= observed) {
        counts[0]++;
      }
      return;
    }
    for (int i = place; i < a.length; i++) {
      swap(b, place, i);
      count(a, b, place + 1, sum + a[place] * b[place], observed, counts);
      swap(b, place, i);
    }
  }

  private static void swap(double[] b, int i, int k) {
    double kept = b[i];
    b[i] = b[k];
    b[k] = kept;
  }
}
