package fettle.statistics;

/**
 * Grubbs' test for one outlying value: the largest, the smallest, or the farther of both.
 *
 * <p>G = (extreme − mean)/s. With t the point of Student's t on n − 2 degrees of freedom exceeded
 * with probability α/n (one end) or α/(2n) (either end), the critical value is
 *
 * <pre>  (n − 1)/√n · √(t² / (n − 2 + t²))</pre>
 *
 * It is exact for one end while two values cannot both exceed it, which holds at the usual levels,
 * and never too small. The table "single outlier" of ISO 5725-2 at 5 % and 1 % holds the values for
 * {@link Tail#EITHER}.
 *
 * <p>Cost: O(n), no allocation but the result.
 *
 * @param size number of values
 * @param index where the suspected value stands
 * @param statistic G, not negative
 * @param tail which end was asked for
 * @param pValue probability of so large a G when all values come from one normal distribution (an
 *     upper bound, sharp when small), at most 1
 * @see "F. E. Grubbs, G. Beck, Extension of sample sizes and percentage points for significance
 *     tests of outlying observations, Technometrics 14 (1972) 847"
 * @see "ISO 5725-2:1994, 7.3.4"
 */
public record GrubbsSingle(int size, int index, double statistic, Tail tail, double pValue) {
  private static final String TEST = "Grubbs' test for one value";

  /**
   * Tests the values.
   *
   * @param values at least 3 finite values that differ
   * @param tail which end is suspected
   * @return the suspected value, its G and its p
   * @throws IllegalArgumentException if there are too few values, one is not finite or all are
   *     equal
   */
  public static GrubbsSingle test(double[] values, Tail tail) {
    Arguments.atLeast("values", values.length, 3, TEST);
    Arguments.finite("values", values);
    if (Moments.allEqual(values)) {
      throw Arguments.noSpread("values", values.length, values[0], TEST);
    }
    int n = values.length;
    double mean = Moments.mean(values);
    double s = Math.sqrt(Moments.squaredDeviations(values, mean) / (n - 1));
    int farthest = farthest(values, mean, tail);
    double g = Math.abs(values[farthest] - mean) / s;
    return new GrubbsSingle(n, farthest, g, tail, pValue(g, n, tail));
  }

  private static int farthest(double[] values, double mean, Tail tail) {
    int farthest = 0;
    double largest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < values.length; i++) {
      double out =
          switch (tail) {
            case UPPER -> values[i] - mean;
            case LOWER -> mean - values[i];
            case EITHER -> Math.abs(values[i] - mean);
          };
      if (out > largest) {
        largest = out;
        farthest = i;
      }
    }
    return farthest;
  }

  private static double pValue(double g, int n, Tail tail) {
    double room = (n - 1.0) * (n - 1.0) - n * g * g;
    if (room <= 0) {
      return 0;
    }
    double t = Math.sqrt(n * (n - 2.0) * g * g / room);
    return Math.min(1, ends(tail) * n * Quantiles.tTail(t, n - 2.0));
  }

  /**
   * Critical value of G.
   *
   * @param n number of values, at least 3
   * @param alpha level of the test, strictly between 0 and 1
   * @param tail which end is suspected
   * @return the G exceeded with probability alpha
   */
  public static double criticalValue(int n, double alpha, Tail tail) {
    Arguments.countAtLeast("n", n, 3);
    Arguments.probability("alpha", alpha);
    double t = Quantiles.upperT(alpha / (ends(tail) * n), n - 2.0);
    return (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
  }

  private static double ends(Tail tail) {
    return tail == Tail.EITHER ? 2 : 1;
  }
}
