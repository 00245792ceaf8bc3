package fettle.statistics;

import java.util.Arrays;

/**
 * Shapiro and Wilk's test of normality, coefficients and p by Royston's approximation AS R94.
 *
 * <p>For 3 to 5000 values. Small W speaks against normality. Ties (coarse resolution) lower W.
 *
 * @param size number of values
 * @param statistic W, above 0 and at most 1
 * @param pValue probability of so small a W for normal values
 * @see "S. S. Shapiro, M. B. Wilk, An analysis of variance test for normality (complete samples),
 *     Biometrika 52 (1965) 591"
 * @see "P. Royston, Remark AS R94, Appl. Stat. 44 (1995) 547"
 */
public record ShapiroWilk(int size, double statistic, double pValue) {
  private static final String TEST = "the Shapiro–Wilk test";
  private static final int LARGEST = 5000;
  // polynomials of AS R94, constant term first
  private static final double[] LAST = {0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056};
  private static final double[] NEXT_TO_LAST = {
    0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633
  };
  private static final double[] SMALL_MEAN = {0.544, -0.39978, 0.025054, -6.714e-4};
  private static final double[] SMALL_LOG_SD = {1.3822, -0.77857, 0.062767, -0.0020322};
  private static final double[] LARGE_MEAN = {-1.5861, -0.31082, -0.083751, 0.0038915};
  private static final double[] LARGE_LOG_SD = {-0.4803, -0.082676, 0.0030302};
  private static final double[] BEND = {-2.273, 0.459};

  /**
   * Tests values.
   *
   * @param values 3 to 5000 finite values that differ
   * @return W and p
   */
  public static ShapiroWilk test(double[] values) {
    Arguments.atLeast("values", values.length, 3, TEST);
    if (values.length > LARGEST) {
      throw new IllegalArgumentException(
          "values has " + values.length + " values: " + TEST + " takes at most " + LARGEST);
    }
    Arguments.finite("values", values);
    if (Moments.allEqual(values)) {
      throw Arguments.noSpread("values", values.length, values[0], TEST);
    }
    double[] x = values.clone();
    Arrays.sort(x);
    int n = x.length;
    double[] a = coefficients(n);
    double mean = Moments.mean(x);
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * (x[n - 1 - i] - x[i]);
    }
    double squares = Moments.squaredDeviations(x, mean);
    double root = Math.sqrt(squares);
    // Σa² is 1: 1 − W from the difference of roots keeps its digits near W = 1
    double rest = Math.max(0, (root - sum) * (root + sum) / squares);
    return new ShapiroWilk(n, 1 - rest, pValue(n, rest));
  }

  /** The upper half of the antisymmetric coefficients, largest first. */
  private static double[] coefficients(int n) {
    if (n == 3) {
      return new double[] {Math.sqrt(0.5)};
    }
    int half = n / 2;
    double[] m = new double[half];
    double squares = 0;
    for (int i = 0; i < half; i++) {
      m[i] = Quantiles.upperNormal((i + 0.625) / (n + 0.25));
      squares += 2 * m[i] * m[i];
    }
    double length = Math.sqrt(squares);
    double small = 1 / Math.sqrt(n);
    double[] a = new double[half];
    a[0] = polynomial(LAST, small) + m[0] / length;
    double left = squares - 2 * m[0] * m[0];
    double share = 1 - 2 * a[0] * a[0];
    int from = 1;
    if (n > 5) {
      a[1] = polynomial(NEXT_TO_LAST, small) + m[1] / length;
      left -= 2 * m[1] * m[1];
      share -= 2 * a[1] * a[1];
      from = 2;
    }
    double scale = Math.sqrt(left / share);
    for (int i = from; i < half; i++) {
      a[i] = m[i] / scale;
    }
    return a;
  }

  private static double pValue(int n, double rest) {
    if (n == 3) {
      double w = 1 - rest;
      return Math.max(
          0, 6 / Math.PI * (StrictMath.asin(Math.sqrt(w)) - StrictMath.asin(Math.sqrt(0.75))));
    }
    if (rest == 0) {
      return 1;
    }
    double y = StrictMath.log(rest);
    double logN = StrictMath.log(n);
    double mean;
    double sd;
    if (n <= 11) {
      double bend = polynomial(BEND, n);
      if (y >= bend) {
        return 0;
      }
      y = -StrictMath.log(bend - y);
      mean = polynomial(SMALL_MEAN, n);
      sd = StrictMath.exp(polynomial(SMALL_LOG_SD, n));
    } else {
      mean = polynomial(LARGE_MEAN, logN);
      sd = StrictMath.exp(polynomial(LARGE_LOG_SD, logN));
    }
    return Quantiles.normalTail((y - mean) / sd);
  }

  private static double polynomial(double[] c, double x) {
    double sum = 0;
    for (int k = c.length - 1; k >= 0; k--) {
      sum = sum * x + c[k];
    }
    return sum;
  }
}
