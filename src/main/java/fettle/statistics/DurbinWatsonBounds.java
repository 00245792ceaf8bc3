package fettle.statistics;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Durbin and Watson's bounds: critical values that hold for every design with a constant.
 *
 * <p>The eigenvalues of any design with k regressors beside the constant lie between the smallest
 * and the largest n − 1 − k of 2(1 − cos(πi/n)), i = 1 … n − 1. Below the lower bound serial
 * correlation is shown whatever the design, above the upper it is not, in between the bounds do not
 * decide and {@link DurbinWatson} does.
 *
 * <p>Cost: O(n) for each of some ten steps.
 *
 * @param lower dL
 * @param upper dU
 * @see "J. Durbin, G. S. Watson, Biometrika 38 (1951) 159, Table 4"
 */
public record DurbinWatsonBounds(double lower, double upper) {
  /** What the bounds say of a statistic. */
  public enum Verdict {
    /** Positive serial correlation at the level of the bounds. */
    POSITIVE_CORRELATION,
    /** No positive serial correlation shown. */
    NOT_SHOWN,
    /** The bounds do not decide. */
    UNDECIDED
  }

  /**
   * Computes the bounds.
   *
   * @param n number of residuals, at least regressors + 3
   * @param regressors columns of the design beside the constant, at least 1
   * @param alpha one-sided level, strictly between 0 and 1
   * @return both bounds
   */
  public static DurbinWatsonBounds of(int n, int regressors, double alpha) {
    Arguments.countAtLeast("regressors", regressors, 1);
    Arguments.countAtLeast("n", n, regressors + 3);
    Arguments.probability("alpha", alpha);
    return new DurbinWatsonBounds(
        point(n, 1, n - 1 - regressors, alpha), point(n, 1 + regressors, n - 1, alpha));
  }

  private static double point(int n, int from, int to, double alpha) {
    double[] weights = new double[to - from + 1];
    for (int i = from; i <= to; i++) {
      weights[i - from] = 2 * (1 - StrictMath.cos(Math.PI * i / n));
    }
    double[] shifted = new double[weights.length];
    return new BrentSolver(1e-13, 1e-12)
        .solve(
            200,
            d -> {
              for (int j = 0; j < shifted.length; j++) {
                shifted[j] = weights[j] - d;
              }
              return NormalQuadraticForm.negativeProbability(shifted) - alpha;
            },
            0,
            4);
  }

  /**
   * Judges a statistic.
   *
   * @param statistic d; give 4 − d to ask for negative correlation
   * @return what the bounds say
   */
  public Verdict judge(double statistic) {
    if (statistic < lower) {
      return Verdict.POSITIVE_CORRELATION;
    }
    return statistic > upper ? Verdict.NOT_SHOWN : Verdict.UNDECIDED;
  }
}
