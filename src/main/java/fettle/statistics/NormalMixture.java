package fettle.statistics;

/**
 * A mixture of normal distributions, and the half-width about a point that holds a given share of
 * it.
 *
 * <p>This is how an interval marginalises a variance that is itself poorly known: each component is
 * one value of that variance with its posterior weight. Uses the JDK alone.
 *
 * <p>The normal probability comes from the complementary error function by continued fraction and
 * series (Abramowitz and Stegun 7.1.5 and 7.1.14), relative error below 5e-14, and z² ulps beyond z
 * = 8.
 */
public final class NormalMixture {
  private static final double SQRT_HALF = Math.sqrt(0.5);
  private static final double TWO_OVER_SQRT_PI = 2 / Math.sqrt(Math.PI);

  private final double[] weights;
  private final double[] offsets;
  private final double[] deviations;
  private int size;

  /**
   * An empty mixture.
   *
   * @param capacity largest number of components
   */
  public NormalMixture(int capacity) {
    weights = new double[capacity];
    offsets = new double[capacity];
    deviations = new double[capacity];
  }

  /** Removes all components, so that the object can serve again. */
  public void clear() {
    size = 0;
  }

  /**
   * Adds a component.
   *
   * @param weight its weight; weights need not sum to 1
   * @param offset its mean, counted from the point about which the interval lies
   * @param standardDeviation its standard deviation, 0 or above
   */
  public void add(double weight, double offset, double standardDeviation) {
    if (!(standardDeviation >= 0)) {
      throw new IllegalArgumentException(
          "standardDeviation " + standardDeviation + ": 0 or above expected");
    }
    weights[size] = weight;
    offsets[size] = offset;
    deviations[size] = standardDeviation;
    size++;
  }

  /**
   * Share of the mixture within a half-width of the point.
   *
   * @param halfWidth 0 or above
   * @return between 0 and 1
   */
  public double probabilityWithin(double halfWidth) {
    double inside = 0;
    double total = 0;
    for (int k = 0; k < size; k++) {
      total += weights[k];
      double d = deviations[k];
      if (d > 0) {
        inside +=
            weights[k]
                * (1
                    - upperTail((halfWidth - offsets[k]) / d)
                    - upperTail((halfWidth + offsets[k]) / d));
      } else if (Math.abs(offsets[k]) <= halfWidth) {
        inside += weights[k];
      }
    }
    return inside / total;
  }

  /**
   * The half-width about the point that holds a share of the mixture.
   *
   * @param probability above 0, below 1
   * @return half-width, to a relative 1e-12
   */
  public double halfWidth(double probability) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException("probability " + probability + ": within (0, 1) expected");
    }
    double largest = 0;
    for (int k = 0; k < size; k++) {
      largest = Math.max(largest, Math.abs(offsets[k]) + deviations[k]);
    }
    if (size == 0 || largest == 0) {
      return 0;
    }
    double low = 0;
    double high = 2 * largest;
    while (probabilityWithin(high) < probability) {
      low = high;
      high *= 2;
      if (Double.isInfinite(high)) {
        return Double.POSITIVE_INFINITY;
      }
    }
    double x = Math.min(high, Math.max(low, 2 * typicalDeviation()));
    for (int iteration = 0; iteration < 200; iteration++) {
      double excess = probabilityWithin(x) - probability;
      if (excess > 0) {
        high = x;
      } else {
        low = x;
      }
      double slope = densityWithin(x);
      double next = x - excess / slope;
      if (!(next > low && next < high)) {
        next = 0.5 * (low + high);
      }
      if (Math.abs(next - x) <= 1e-13 * x || high - low <= 1e-13 * high) {
        return next;
      }
      x = next;
    }
    return x;
  }

  private double typicalDeviation() {
    double sum = 0;
    double total = 0;
    for (int k = 0; k < size; k++) {
      sum += weights[k] * (deviations[k] + Math.abs(offsets[k]));
      total += weights[k];
    }
    return sum / total;
  }

  private double densityWithin(double x) {
    double density = 0;
    double total = 0;
    for (int k = 0; k < size; k++) {
      total += weights[k];
      double d = deviations[k];
      if (d > 0) {
        double a = (x - offsets[k]) / d;
        double b = (x + offsets[k]) / d;
        density +=
            weights[k]
                / d
                * 0.3989422804014327
                * (StrictMath.exp(-0.5 * a * a) + StrictMath.exp(-0.5 * b * b));
      }
    }
    return density / total;
  }

  /**
   * Probability that a standard normal variable exceeds z.
   *
   * @param z any value
   * @return between 0 and 1
   */
  public static double upperTail(double z) {
    double x = Math.abs(z) * SQRT_HALF;
    double half;
    if (x < 2) {
      half = 0.5 - 0.5 * errorFunction(x);
    } else if (x < 27.5) {
      half = 0.5 * complementary(x);
    } else {
      half = 0;
    }
    return z >= 0 ? half : 1 - half;
  }

  /** erf by its series e^(−x²) Σ 2^k x^(2k+1) / (2k+1)!!, all terms positive. */
  private static double errorFunction(double x) {
    double term = x;
    double sum = x;
    double square = 2 * x * x;
    for (int k = 1; term > 1e-17 * sum; k++) {
      term *= square / (2 * k + 1);
      sum += term;
    }
    return TWO_OVER_SQRT_PI * StrictMath.exp(-x * x) * sum;
  }

  /**
   * erfc by its continued fraction, from a depth that leaves less than 1e-16 for x of 2 and more.
   */
  private static double complementary(double x) {
    double fraction = 0;
    for (int k = 8 + (int) (170 / (x * x)); k >= 1; k--) {
      fraction = 0.5 * k / (x + fraction);
    }
    return 0.5 * TWO_OVER_SQRT_PI * StrictMath.exp(-x * x) / (x + fraction);
  }
}
