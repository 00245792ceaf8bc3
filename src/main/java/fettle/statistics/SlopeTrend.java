package fettle.statistics;

/**
 * Test of a straight-line trend: the slope of y on x over its standard error, Student's t.
 *
 * @param slope in units of y per x
 * @param standardError of the slope
 * @param degreesOfFreedom n − 2
 * @see "NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4.1"
 */
public record SlopeTrend(double slope, double standardError, int degreesOfFreedom) {
  /**
   * Of values in their order, x = 0, 1, 2 …
   *
   * @param values at least 3 finite values that differ
   * @return the trend for one step
   */
  public static SlopeTrend inOrder(double[] values) {
    double[] x = new double[values.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = i;
    }
    return of(x, values);
  }

  /**
   * Of y on x.
   *
   * @param x at least 3 finite values that differ
   * @param y as many finite values that differ
   * @return the trend
   */
  public static SlopeTrend of(double[] x, double[] y) {
    Arguments.sameLength("x", x.length, "y", y.length);
    Arguments.atLeast("x", x.length, 3, "a trend");
    Arguments.finite("x", x);
    Arguments.finite("y", y);
    if (Moments.allEqual(x)) {
      throw Arguments.noSpread("x", x.length, x[0], "a trend");
    }
    if (Moments.allEqual(y)) {
      throw Arguments.noSpread("y", y.length, y[0], "a trend");
    }
    double mx = Moments.mean(x);
    double my = Moments.mean(y);
    double sxx = 0;
    double sxy = 0;
    for (int i = 0; i < x.length; i++) {
      sxx += (x[i] - mx) * (x[i] - mx);
      sxy += (x[i] - mx) * (y[i] - my);
    }
    double slope = sxy / sxx;
    double squares = 0;
    for (int i = 0; i < x.length; i++) {
      double e = y[i] - my - slope * (x[i] - mx);
      squares += e * e;
    }
    int freedom = x.length - 2;
    return new SlopeTrend(slope, Math.sqrt(squares / freedom / sxx), freedom);
  }

  /**
   * Slope over its standard error.
   *
   * @return t; infinite when the values lie exactly on a line
   */
  public double t() {
    return slope / standardError;
  }

  /**
   * Two-sided p of no trend.
   *
   * @return p
   */
  public double pValue() {
    return standardError == 0 ? 0 : Quantiles.tTwoTails(t(), degreesOfFreedom);
  }

  /**
   * Half width of the interval of the slope.
   *
   * @param confidence e.g. 0.95
   * @return t times standard error
   */
  public double halfWidth(double confidence) {
    Arguments.probability("confidence", confidence);
    return Quantiles.upperT(0.5 * (1 - confidence), degreesOfFreedom) * standardError;
  }
}
