package fettle.policy;

/**
 * How a measured error is judged against a limit, JCGM 106:2012.
 *
 * @param guardBandFactor guard band w as a multiple of U: 0 is simple acceptance (8.2), 1 is a
 *     guard band of U (8.3.2)
 * @param limitsAlreadyGuarded whether the limits already allow for measurement uncertainty, so that
 *     a guard band would count it twice
 */
public record DecisionRule(double guardBandFactor, boolean limitsAlreadyGuarded) {
  /** Checks the factor. */
  public DecisionRule {
    if (!(guardBandFactor >= 0 && guardBandFactor <= 3)) {
      throw new IllegalArgumentException(
          "guardBandFactor " + guardBandFactor + ": 0 to 3 expected");
    }
  }

  /**
   * Judges an error.
   *
   * @param error measured error, in the scale's unit
   * @param expandedUncertainty of the error
   * @param limit largest permissible absolute error
   * @return the verdict
   */
  public Conformity judge(double error, double expandedUncertainty, double limit) {
    double size = Math.abs(error);
    double band = guardBandFactor * expandedUncertainty;
    if (size <= limit - band) {
      return Conformity.PASS;
    }
    if (size <= limit) {
      return Conformity.CONDITIONAL_PASS;
    }
    return size <= limit + band ? Conformity.CONDITIONAL_FAIL : Conformity.FAIL;
  }
}
