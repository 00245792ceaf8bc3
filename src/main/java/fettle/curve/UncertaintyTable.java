package fettle.curve;

/**
 * Expanded uncertainty of a result over the valid range for one number of readings, by cubic
 * interpolation between exact values; for long streams of responses.
 *
 * <p>The exact half-width solves an equation over a few hundred normal components. It varies
 * smoothly with the response, so that a cubic through four of 513 equally spaced exact values stays
 * within a part in 10⁹ of it. That is verified when the table is made, between the points; where it
 * does not hold, the table says so and gives the exact values instead.
 *
 * <p>One table, one thread.
 */
public final class UncertaintyTable {
  private static final int INTERVALS = 512;
  private static final double TOLERANCE = 1e-9;

  private final CurveEvaluator evaluator;
  private final int readings;
  private final double low;
  private final double step;
  private final double[] values;
  private final boolean interpolates;

  /**
   * A table.
   *
   * @param curve curve
   * @param readings number of readings of each result, at least 1
   */
  public UncertaintyTable(Curve curve, int readings) {
    this.evaluator = curve.evaluator();
    this.readings = readings;
    this.low = curve.range().responseLow();
    this.step = (curve.range().responseHigh() - low) / INTERVALS;
    this.values = new double[INTERVALS + 1];
    for (int k = 0; k <= INTERVALS; k++) {
      values[k] = exact(low + k * step);
    }
    this.interpolates = step > 0 && verified();
  }

  private double exact(double response) {
    return evaluator.resultAt(response, readings, Double.NaN).expandedUncertainty();
  }

  private boolean verified() {
    for (int k = 0; k < INTERVALS; k += 16) {
      double response = low + (k + 0.5) * step;
      double exact = exact(response);
      if (!(Math.abs(interpolated(response) - exact) <= TOLERANCE * exact)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Expanded uncertainty of the mean of the table's number of readings.
   *
   * @param response mean response within the valid range
   * @return half-width of the 95 % interval, in the scale's unit
   */
  public double at(double response) {
    return interpolates ? interpolated(response) : exact(response);
  }

  /** Lagrange's cubic through the four nearest points. */
  private double interpolated(double response) {
    double x = (response - low) / step;
    int k = (int) x;
    k = Math.max(1, Math.min(INTERVALS - 2, k));
    double t = x - k;
    double a = values[k - 1];
    double b = values[k];
    double c = values[k + 1];
    double d = values[k + 2];
    return b
        + t
            * ((c - a / 3 - b / 2 - d / 6)
                + t * ((a + c) / 2 - b + t * ((b - c) / 2 + (d - a) / 6)));
  }
}
