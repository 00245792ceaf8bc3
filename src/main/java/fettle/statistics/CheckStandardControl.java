package fettle.statistics;

/**
 * Control of a linear calibration {@code y = a + b x} by check standards.
 *
 * <p>Each reading of a standard of known x gives w = (y − a)/b − x, held against ± s t/b, t
 * exceeded with probability ζ = ½(1 − (1 − α)^{1/m}) on the degrees of freedom of s, so that m
 * standards read together raise a false alarm with probability α.
 *
 * @param intercept a
 * @param slope b, not zero
 * @param residualStandardDeviation s of the calibration, above zero
 * @param degreesOfFreedom of s
 * @param standards m, number of check standards read together
 * @param alpha false alarms for one set of readings
 * @see "NIST/SEMATECH e-Handbook of Statistical Methods, 2.3.7"
 * @see "ISO 11095:1996, 8 (control method)"
 */
public record CheckStandardControl(
    double intercept,
    double slope,
    double residualStandardDeviation,
    double degreesOfFreedom,
    int standards,
    double alpha) {
  /**
   * Checks the settings.
   *
   * @param intercept a
   * @param slope b
   * @param residualStandardDeviation s
   * @param degreesOfFreedom of s
   * @param standards m
   * @param alpha false alarms for one set of readings
   */
  public CheckStandardControl {
    Arguments.finite("intercept", intercept);
    Arguments.positive("|slope|", Math.abs(slope));
    Arguments.positive("residualStandardDeviation", residualStandardDeviation);
    Arguments.positive("degreesOfFreedom", degreesOfFreedom);
    Arguments.countAtLeast("standards", standards, 1);
    Arguments.probability("alpha", alpha);
  }

  /**
   * Probability of each tail for one reading.
   *
   * @return ζ
   */
  public double zeta() {
    return -0.5 * StrictMath.expm1(StrictMath.log1p(-alpha) / standards);
  }

  /**
   * Point of Student's t.
   *
   * @return t exceeded with probability ζ
   */
  public double criticalT() {
    return Quantiles.upperT(zeta(), degreesOfFreedom);
  }

  /**
   * Limits of w.
   *
   * @return ± s t/|b|
   */
  public ControlLimits limits() {
    double half = residualStandardDeviation * criticalT() / Math.abs(slope);
    return new ControlLimits(-half, 0, half);
  }

  /**
   * The charted value.
   *
   * @param known x of the check standard
   * @param reading y
   * @return w
   */
  public double deviation(double known, double reading) {
    return (reading - intercept) / slope - known;
  }
}
