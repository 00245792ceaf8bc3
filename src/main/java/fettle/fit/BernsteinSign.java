package fettle.fit;

/**
 * Proves the sign of a polynomial over an interval by Bernstein coefficients and bisection.
 *
 * <p>On an interval a polynomial lies within the hull of its Bernstein coefficients (G. Farin,
 * Curves and Surfaces for CAGD, 5th ed., section 5.2), so coefficients of one strict sign prove the
 * sign. Otherwise the interval is halved by de Casteljau's scheme. Coefficients must exceed a bound
 * on the rounding error of their computation to count as proof.
 */
final class BernsteinSign {
  private static final int MAX_DEPTH = 48;

  private BernsteinSign() {}

  /**
   * The sign over an interval.
   *
   * @param power coefficients a_0 … a_n of Σ a_k x^k
   * @param low lower end
   * @param high upper end
   * @return INCREASING for positive throughout, DECREASING for negative throughout
   */
  static Monotonicity signOf(double[] power, double low, double high) {
    int degree = power.length - 1;
    double width = high - low;
    // Taylor shift to low and scale by width: q(s) = p(low + s width), s in [0, 1].
    double[] shifted = power.clone();
    double[] magnitude = new double[degree + 1];
    for (int k = 0; k <= degree; k++) {
      magnitude[k] = Math.abs(power[k]);
    }
    for (int i = 0; i < degree; i++) {
      for (int k = degree - 1; k >= i; k--) {
        shifted[k] += low * shifted[k + 1];
        magnitude[k] += Math.abs(low) * magnitude[k + 1];
      }
    }
    double factor = 1;
    double bound = 0;
    for (int k = 0; k <= degree; k++) {
      shifted[k] *= factor;
      bound += magnitude[k] * factor;
      factor *= width;
    }
    double[] bernstein = new double[degree + 1];
    for (int j = 0; j <= degree; j++) {
      double sum = 0;
      for (int k = 0; k <= j; k++) {
        sum += binomial(j, k) / binomial(degree, k) * shifted[k];
      }
      bernstein[j] = sum;
    }
    // 8 n² ulps cover the shift, the change of basis and every later convex combination.
    double error = 8.0 * (degree + 1) * (degree + 1) * bound * Math.ulp(1.0);
    return decide(bernstein, error, 0);
  }

  private static Monotonicity decide(double[] b, double error, int depth) {
    boolean positive = true;
    boolean negative = true;
    for (double coefficient : b) {
      positive &= coefficient > error;
      negative &= coefficient < -error;
    }
    if (positive) {
      return Monotonicity.INCREASING;
    }
    if (negative) {
      return Monotonicity.DECREASING;
    }
    int last = b.length - 1;
    // End coefficients are values of the polynomial.
    if (b[0] > error && b[last] < -error || b[0] < -error && b[last] > error) {
      return Monotonicity.NOT_MONOTONE;
    }
    if (depth == MAX_DEPTH || Math.abs(b[0]) <= error && Math.abs(b[last]) <= error) {
      return Monotonicity.UNDECIDED;
    }
    double[] left = new double[b.length];
    double[] right = b.clone();
    for (int i = 0; i <= last; i++) {
      left[i] = right[0];
      for (int k = 0; k < last - i; k++) {
        right[k] = 0.5 * (right[k] + right[k + 1]);
      }
    }
    // After the scheme right holds the coefficients of the right half in place.
    Monotonicity first = decide(left, error, depth + 1);
    if (!first.isProven()) {
      return first;
    }
    Monotonicity second = decide(right, error, depth + 1);
    if (!second.isProven()) {
      return second;
    }
    return first == second ? first : Monotonicity.NOT_MONOTONE;
  }

  private static double binomial(int n, int k) {
    double value = 1;
    for (int i = 1; i <= k; i++) {
      value = value * (n - k + i) / i;
    }
    return Math.rint(value);
  }
}
