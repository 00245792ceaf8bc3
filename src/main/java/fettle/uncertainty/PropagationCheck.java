package fettle.uncertainty;

/**
 * Whether the law of propagation of uncertainty may stand for a Monte Carlo propagation: both ends
 * of its interval agree with the Monte Carlo interval within the numerical tolerance of the
 * standard uncertainty (JCGM 101:2008, clause 8.1).
 *
 * @param tolerance δ, in the unit of the quantity
 * @param lowDifference d_low = |y − U − y_low|
 * @param highDifference d_high = |y + U − y_high|
 */
public record PropagationCheck(double tolerance, double lowDifference, double highDifference) {
  /**
   * Compares.
   *
   * @param estimate y of the law of propagation
   * @param standardUncertainty u(y), above 0
   * @param expandedUncertainty U = k u(y) for 95 %
   * @param monteCarlo the same quantity by Monte Carlo, with enough trials that its own ends stand
   *     to a fraction of δ
   * @param digits significant digits of u(y) that are regarded as meaningful, 1 or 2
   * @return the comparison
   */
  public static PropagationCheck of(
      double estimate,
      double standardUncertainty,
      double expandedUncertainty,
      MonteCarloOutput monteCarlo,
      int digits) {
    return new PropagationCheck(
        MonteCarlo.numericalTolerance(standardUncertainty, digits),
        Math.abs(estimate - expandedUncertainty - monteCarlo.low()),
        Math.abs(estimate + expandedUncertainty - monteCarlo.high()));
  }

  /**
   * The outcome.
   *
   * @return true where neither difference exceeds δ
   */
  public boolean validated() {
    return lowDifference <= tolerance && highDifference <= tolerance;
  }
}
