package fettle.statistics;

import org.apache.commons.numbers.gamma.LogGamma;

/**
 * Expectation and standard deviation of the range, and expectation of the standard deviation, of n
 * normal values in units of σ.
 *
 * <pre>
 *   c4 = √(2/(n−1)) Γ(n/2)/Γ((n−1)/2),   d2 = ∫ [1 − Φⁿ − (1−Φ)ⁿ] dx,   d3² = E R² − d2²,
 *   E R² = ∫_0^∞ 2 r P(R above r) dr
 * </pre>
 *
 * The first integral by the trapezoidal rule, exponentially convergent, the second over the
 * distribution of the range. Accuracy about 1e-11.
 *
 * @param size n
 * @param d2 mean range
 * @param d3 standard deviation of the range
 * @param c4 mean standard deviation
 * @see "D. C. Montgomery, Introduction to Statistical Quality Control, 6.2 and 6.3"
 * @see "H. L. Harter, Tables of range and studentized range, Ann. Math. Stat. 31 (1960) 1122"
 */
public record SubgroupConstants(int size, double d2, double d3, double c4) {
  private static final double STEP = 0.125;
  private static final double REACH = 9;
  private static final GaussLegendre PIECE = new GaussLegendre(64);

  /**
   * For subgroups of n values.
   *
   * @param n 2 to 1000
   * @return the constants
   */
  public static SubgroupConstants of(int n) {
    if (n < 2 || n > 1000) {
      throw new IllegalArgumentException("n is " + n + ": it must lie between 2 and 1000");
    }
    double c4 =
        Math.sqrt(2.0 / (n - 1))
            * StrictMath.exp(LogGamma.value(0.5 * n) - LogGamma.value(0.5 * (n - 1)));
    double d2 = 0;
    for (double x = -REACH; x <= REACH; x += STEP) {
      double above = Quantiles.normalTail(x);
      d2 += 1 - StrictMath.pow(1 - above, n) - StrictMath.pow(above, n);
    }
    d2 *= STEP;
    double square = 0;
    double longest = 2 * REACH;
    for (int i = 0; i < PIECE.points.length; i++) {
      double r = PIECE.points[i] * longest;
      square += PIECE.weights[i] * 2 * r * (1 - rangeProbability(r, n));
    }
    return new SubgroupConstants(n, d2, Math.sqrt(square * longest - d2 * d2), c4);
  }

  /** P(R ≤ r) = n ∫ φ(x) [Φ(x + r) − Φ(x)]^(n−1) dx. */
  private static double rangeProbability(double r, int n) {
    double sum = 0;
    for (double x = -REACH; x <= REACH; x += STEP) {
      double between = Quantiles.normalTail(x) - Quantiles.normalTail(x + r);
      sum += StrictMath.exp(-0.5 * x * x) * StrictMath.pow(between, n - 1);
    }
    return n * sum * STEP / Math.sqrt(2 * Math.PI);
  }

  /**
   * The factors of the charts.
   *
   * @return A2, D3, D4, A3, B3, B4
   */
  public ControlFactors factors() {
    double root = Math.sqrt(size);
    double range = 3 * d3 / d2;
    double scatter = 3 * Math.sqrt((1 - c4) * (1 + c4)) / c4;
    return new ControlFactors(
        3 / (d2 * root),
        Math.max(0, 1 - range),
        1 + range,
        3 / (c4 * root),
        Math.max(0, 1 - scatter),
        1 + scatter);
  }
}
