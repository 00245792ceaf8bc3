package fettle.statistics;

import org.apache.commons.numbers.gamma.LogGamma;

/**
 * Exact test of the number of runs of one sign (Wald and Wolfowitz).
 *
 * <p>Too few runs show a trend or a missed bend, too many an alternation. The probabilities are
 * those of the number of runs among all orders of the given numbers of signs.
 *
 * <p>Cost: O(n); no allocation but the result.
 *
 * @param positive number of positive signs
 * @param negative number of negative signs
 * @param runs number of runs
 * @param fewPValue probability of so few runs
 * @param manyPValue probability of so many runs
 * @see "A. Wald, J. Wolfowitz, On a test whether two samples are from the same population, Ann.
 *     Math. Stat. 11 (1940) 147"
 */
public record RunsTest(int positive, int negative, int runs, double fewPValue, double manyPValue) {
  /**
   * Of the signs of residuals in their order; zeros are left out.
   *
   * @param residuals finite values, at least one of each sign
   * @return the runs and their probabilities
   */
  public static RunsTest ofSigns(double[] residuals) {
    return about(residuals, 0);
  }

  /**
   * Of values above and below their median; values equal to it are left out.
   *
   * @param values finite values in their order, at least one above and one below the median
   * @return the runs and their probabilities
   */
  public static RunsTest aboutMedian(double[] values) {
    Arguments.atLeast("values", values.length, 2, "a runs test");
    Arguments.finite("values", values);
    return about(values, OrderStatistics.median(values));
  }

  private static RunsTest about(double[] values, double centre) {
    Arguments.atLeast("values", values.length, 2, "a runs test");
    Arguments.finite("values", values);
    int above = 0;
    int below = 0;
    int runs = 0;
    int last = 0;
    for (double value : values) {
      if (value == centre) {
        continue;
      }
      int side = value > centre ? 1 : -1;
      if (side > 0) {
        above++;
      } else {
        below++;
      }
      if (side != last) {
        runs++;
      }
      last = side;
    }
    if (above == 0 || below == 0) {
      throw new IllegalArgumentException(
          above
              + " values lie above "
              + centre
              + " and "
              + below
              + " below: a runs test needs both");
    }
    return of(above, below, runs);
  }

  /**
   * From counts.
   *
   * @param positive number of positive signs, at least 1
   * @param negative number of negative signs, at least 1
   * @param runs number of runs, 2 to 2 min + 1
   * @return the probabilities
   */
  public static RunsTest of(int positive, int negative, int runs) {
    Arguments.countAtLeast("positive", positive, 1);
    Arguments.countAtLeast("negative", negative, 1);
    int most = Math.min(positive + negative, 2 * Math.min(positive, negative) + 1);
    if (runs < 2 || runs > most) {
      throw new IllegalArgumentException(
          "runs is "
              + runs
              + ": "
              + positive
              + " and "
              + negative
              + " signs make 2 to "
              + most
              + " runs");
    }
    double few = 0;
    double many = 0;
    double orders = logChoose(positive + negative, positive);
    for (int r = 2; r <= most; r++) {
      double p = probability(positive, negative, r, orders);
      if (r <= runs) {
        few += p;
      }
      if (r >= runs) {
        many += p;
      }
    }
    return new RunsTest(positive, negative, runs, Math.min(1, few), Math.min(1, many));
  }

  private static double probability(int a, int b, int runs, double orders) {
    int half = runs / 2;
    if (runs % 2 == 0) {
      return 2 * ways(a, b, half - 1, half - 1, orders);
    }
    return ways(a, b, half, half - 1, orders) + ways(a, b, half - 1, half, orders);
  }

  private static double ways(int a, int b, int cutsOfA, int cutsOfB, double orders) {
    if (cutsOfA > a - 1 || cutsOfB > b - 1) {
      return 0;
    }
    return StrictMath.exp(logChoose(a - 1, cutsOfA) + logChoose(b - 1, cutsOfB) - orders);
  }

  private static double logChoose(int n, int k) {
    return LogGamma.value(n + 1.0) - LogGamma.value(k + 1.0) - LogGamma.value(n - k + 1.0);
  }

  /**
   * Two-sided p.
   *
   * @return twice the smaller one, at most 1
   */
  public double pValue() {
    return Math.min(1, 2 * Math.min(fewPValue, manyPValue));
  }
}
