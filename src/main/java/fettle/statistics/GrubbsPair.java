package fettle.statistics;

import java.util.Arrays;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Grubbs' test for two outlying values at one end: the two largest or the two smallest.
 *
 * <p>The statistic is the sum of squares about the mean without the pair over that of all n values;
 * a small ratio is significant. Its distribution is computed, not tabulated: with ρ² the ratio,
 *
 * <pre>  P(ratio ≤ c) = n(n−1)/2 · (n−3) ∫_0^√c ρ^{n−4} K(ρ) dρ</pre>
 *
 * where K is the share of directions of the pair in which both its values exceed all others, found
 * by quadrature from the distribution of the largest deviation of n − 2 values (the recursion of
 * Grubbs 1950). Relative error of a probability below 1e-5 for n up to 120 (against eightfold finer
 * grids).
 *
 * <p>An instance holds the tables for one n; build it once for many cells of equal size. The table
 * "double outlier" of ISO 5725-2 at 5 % and 1 % (two-sided) holds {@code criticalValue(0.025)} and
 * {@code criticalValue(0.005)}.
 *
 * @see "F. E. Grubbs, Sample criteria for testing outlying observations, Ann. Math. Stat. 21 (1950)
 *     27"
 * @see "ISO 5725-2:1994, 7.3.4.2"
 */
public final class GrubbsPair {
  private static final String TEST = "Grubbs' test for two values";
  private static final GaussLegendre DIRECTION = new GaussLegendre(32);
  private static final GaussLegendre RADIUS = new GaussLegendre(16);
  private static final int PANELS = 8;

  private final int n;
  private final LargestDeviation others;

  private GrubbsPair(int n) {
    this.n = n;
    this.others = LargestDeviation.of(n - 2);
  }

  /**
   * The test for cells of n values.
   *
   * @param n number of values, at least 4
   * @return the test with its tables
   */
  public static GrubbsPair forSize(int n) {
    Arguments.countAtLeast("n", n, 4);
    return new GrubbsPair(n);
  }

  /**
   * Number of values the test is for.
   *
   * @return n
   */
  public int size() {
    return n;
  }

  /**
   * The statistic.
   *
   * @param values n finite values, n at least 4, that differ
   * @param tail {@link Tail#UPPER} for the two largest, {@link Tail#LOWER} for the two smallest,
   *     {@link Tail#EITHER} for the smaller of both ratios
   * @return sum of squares without the pair over sum of squares of all, 0 to 1
   */
  public static double ratio(double[] values, Tail tail) {
    Arguments.atLeast("values", values.length, 4, TEST);
    Arguments.finite("values", values);
    if (Moments.allEqual(values)) {
      throw Arguments.noSpread("values", values.length, values[0], TEST);
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int last = sorted.length;
    return switch (tail) {
      case UPPER -> ratio(sorted, 0, last - 2);
      case LOWER -> ratio(sorted, 2, last);
      case EITHER -> Math.min(ratio(sorted, 0, last - 2), ratio(sorted, 2, last));
    };
  }

  private static double ratio(double[] sorted, int from, int to) {
    return squares(sorted, from, to) / squares(sorted, 0, sorted.length);
  }

  private static double squares(double[] sorted, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += sorted[i];
    }
    double mean = sum / (to - from);
    double squares = 0;
    double first = 0;
    for (int i = from; i < to; i++) {
      squares += (sorted[i] - mean) * (sorted[i] - mean);
      first += sorted[i] - mean;
    }
    return squares - first * first / (to - from);
  }

  /**
   * Probability of so small a ratio at one named end, when all values come from one normal
   * distribution. Twice it (at most 1) is the p of {@link Tail#EITHER}.
   *
   * @param ratio the statistic, 0 to 1
   * @return p
   */
  public double pValue(double ratio) {
    if (!(ratio >= 0 && ratio <= 1)) {
      throw new IllegalArgumentException("ratio is " + ratio + ": it must lie between 0 and 1");
    }
    return Math.min(1, belowRoot(Math.sqrt(ratio)));
  }

  private double belowRoot(double root) {
    double sum = 0;
    for (int panel = 0; panel < PANELS; panel++) {
      for (int i = 0; i < RADIUS.points.length; i++) {
        double share = (panel + RADIUS.points[i]) / PANELS;
        double weight = StrictMath.pow(share, n - 4) * RADIUS.weights[i] / PANELS;
        sum += weight * directions(share * root);
      }
    }
    return 0.5 * n * (n - 1.0) * (n - 3.0) * StrictMath.pow(root, n - 3) * sum;
  }

  /** Share of directions in which the pair is the largest two, at ratio rho². */
  private double directions(double rho) {
    if (rho >= 1) {
      return 0;
    }
    int m = n - 2;
    double along = Math.sqrt(n / (2.0 * m));
    double across = Math.sqrt(0.5);
    double size = Math.sqrt(along * along + across * across);
    double turn = StrictMath.atan2(across, along);
    double stretch = rho / Math.sqrt(1 - rho * rho);
    double certain = angle(Math.sqrt((m - 1.0) / m) * stretch / size) - turn;
    double impossible = angle(Math.sqrt(1 / (m * (m - 1.0))) * stretch / size) - turn;
    if (impossible <= 0) {
      return 0;
    }
    double from = Math.max(0, certain);
    double sum = 0;
    if (m > 2) {
      for (int i = 0; i < DIRECTION.points.length; i++) {
        double phi = from + DIRECTION.points[i] * (impossible - from);
        double bound = size * StrictMath.cos(phi + turn) / stretch;
        sum += DIRECTION.weights[i] * others.at(bound);
      }
    }
    return (from + sum * (impossible - from)) / Math.PI;
  }

  private static double angle(double cosine) {
    return cosine >= 1 ? 0 : StrictMath.acos(cosine);
  }

  /**
   * Critical value for one named end.
   *
   * @param alpha level, strictly between 0 and 1
   * @return the ratio below which the pair is significant
   */
  public double criticalValue(double alpha) {
    Arguments.probability("alpha", alpha);
    // in this power the probability is nearly proportional to the root of the ratio
    double power = 1.0 / (n - 3);
    double target = StrictMath.pow(alpha, power);
    double root =
        new BrentSolver(1e-12, 1e-14)
            .solve(200, r -> StrictMath.pow(belowRoot(r), power) - target, 0, 1);
    return root * root;
  }
}
