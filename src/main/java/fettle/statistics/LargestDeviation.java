package fettle.statistics;

import org.apache.commons.numbers.gamma.LogGamma;

/**
 * Distribution of max(x_k − mean)/√(Σ(x − mean)²) of m normal values, by recursion on m.
 *
 * <p>With sin θ = √(m/(m − 1)) times the deviation, θ in (asin 1/(m − 1), π/2),
 *
 * <pre>  1 − H_m(θ) = m ∫_θ^{π/2} g_m(θ') H_{m−1}(θ'') dθ',   sin θ'' = √(m/(m − 2)) tan θ'</pre>
 *
 * where g_m ∝ cos^{m−3} is the density of one deviation and H_{m−1} the probability that none of
 * the others lies above it (Grubbs 1950, section 4). H_3 is known in closed form. Kept as cubic
 * pieces through value and derivative on an even grid of θ.
 *
 * <p>Cost: O(m · grid) to build. Error about 1e-8.
 */
final class LargestDeviation {
  private static final int GRID = 1024;
  private static final double STEP = 0.5 * Math.PI / GRID;
  private static final GaussLegendre RULE = new GaussLegendre(4);

  final int m;
  private final double[] value;
  private final double[] slope;

  private LargestDeviation(int m, double[] value, double[] slope) {
    this.m = m;
    this.value = value;
    this.slope = slope;
  }

  /** For m values, m at least 2. */
  static LargestDeviation of(int m) {
    LargestDeviation h = new LargestDeviation(Math.min(m, 3), null, null);
    for (int next = 4; next <= m; next++) {
      h = h.next();
    }
    return h;
  }

  private LargestDeviation next() {
    int size = m + 1;
    double[] v = new double[GRID + 1];
    double[] d = new double[GRID + 1];
    double scale = size * densityScale(size);
    v[GRID] = 1;
    d[GRID] = scale * density(size, 0.5 * Math.PI);
    for (int i = GRID - 1; i >= 0; i--) {
      double integral = 0;
      for (int k = 0; k < RULE.points.length; k++) {
        double theta = (i + RULE.points[k]) * STEP;
        integral += RULE.weights[k] * density(size, theta) * atTangent(size, theta);
      }
      v[i] = Math.max(0, v[i + 1] - scale * integral * STEP);
      double theta = i * STEP;
      d[i] = v[i] == 0 ? 0 : scale * density(size, theta) * atTangent(size, theta);
    }
    return new LargestDeviation(size, v, d);
  }

  /** H_{size−1} at the deviation that leaves theta the largest of size values. */
  private double atTangent(int size, double theta) {
    return atSine(Math.sqrt(size / (size - 2.0)) * StrictMath.tan(theta));
  }

  private static double density(int size, double theta) {
    double cosine = StrictMath.cos(theta);
    return cosine <= 0 ? 0 : StrictMath.exp((size - 3) * StrictMath.log(cosine));
  }

  /** One over the integral of cos^(size−3) over −π/2 to π/2. */
  private static double densityScale(int size) {
    return StrictMath.exp(LogGamma.value(0.5 * (size - 1)) - LogGamma.value(0.5 * (size - 2)))
        / Math.sqrt(Math.PI);
  }

  /** P(largest deviation / √Σ ≤ t). */
  double at(double t) {
    return atSine(t * Math.sqrt(m / (m - 1.0)));
  }

  private double atSine(double sine) {
    if (sine >= 1) {
      return 1;
    }
    if (m == 2 || sine * (m - 1) <= 1) {
      return 0;
    }
    if (m == 3) {
      // three residuals are √(2/3) times the cosines of three angles 120° apart
      return 1 - 3 * StrictMath.acos(sine) / Math.PI;
    }
    double place = StrictMath.asin(sine) / STEP;
    int i = Math.min((int) place, GRID - 1);
    double x = place - i;
    double y = 1 - x;
    double between =
        value[i] * (1 + 2 * x) * y * y
            + value[i + 1] * (1 + 2 * y) * x * x
            + STEP * x * y * (slope[i] * y - slope[i + 1] * x);
    return Math.min(1, Math.max(0, between));
  }
}
