package fettle.statistics;

/**
 * An F ratio of two mean squares with its probability.
 *
 * @param statistic numerator over denominator mean square; infinite when the denominator is zero
 * @param numeratorDegreesOfFreedom above zero
 * @param denominatorDegreesOfFreedom above zero
 */
public record FTest(
    double statistic, double numeratorDegreesOfFreedom, double denominatorDegreesOfFreedom) {
  /**
   * From mean squares.
   *
   * @param numerator mean square, not negative
   * @param numeratorFreedom its degrees of freedom, above zero
   * @param denominator mean square, not negative, not zero together with the numerator
   * @param denominatorFreedom its degrees of freedom, above zero
   * @return the ratio
   */
  public static FTest ofMeanSquares(
      double numerator, double numeratorFreedom, double denominator, double denominatorFreedom) {
    Arguments.notNegative("numerator", numerator);
    Arguments.notNegative("denominator", denominator);
    Arguments.positive("numeratorFreedom", numeratorFreedom);
    Arguments.positive("denominatorFreedom", denominatorFreedom);
    if (numerator == 0 && denominator == 0) {
      throw new IllegalArgumentException(
          "numerator and denominator are both 0: their ratio says nothing");
    }
    return new FTest(numerator / denominator, numeratorFreedom, denominatorFreedom);
  }

  /**
   * Lack of fit: scatter of group means about fitted values, against scatter within the groups.
   *
   * <pre>  F = [Σ n_i (m_i − fitted_i)²/(groups − p)] / [Σ (y_ij − m_i)²/(N − groups)]</pre>
   *
   * It tells groups off the curve, not the shape of the curve, from repeatability.
   *
   * @param groups values at each level, each of at least 1 value
   * @param fitted fitted value at each level
   * @param parameters number of fitted parameters p, below the number of groups
   * @return the ratio
   * @see "NIST/SEMATECH e-Handbook of Statistical Methods, 4.4.4.6"
   */
  public static FTest lackOfFit(double[][] groups, double[] fitted, int parameters) {
    Arguments.sameLength("groups", groups.length, "fitted", fitted.length);
    Arguments.finite("groups", groups);
    double[] means = new double[groups.length];
    int[] counts = new int[groups.length];
    for (int i = 0; i < groups.length; i++) {
      Arguments.atLeast("groups[" + i + "]", groups[i].length, 1, "a lack-of-fit test");
      means[i] = Moments.mean(groups[i]);
      counts[i] = groups[i].length;
    }
    return lackOfFit(means, counts, fitted, parameters, PooledVariance.of(groups));
  }

  /**
   * Lack of fit from group means and a repeatability variance.
   *
   * @param means mean at each level
   * @param counts values behind each mean
   * @param fitted fitted value at each level
   * @param parameters number of fitted parameters p, below the number of groups
   * @param repeatability variance within groups
   * @return the ratio
   */
  public static FTest lackOfFit(
      double[] means, int[] counts, double[] fitted, int parameters, PooledVariance repeatability) {
    Arguments.sameLength("means", means.length, "fitted", fitted.length);
    Arguments.sameLength("means", means.length, "counts", counts.length);
    Arguments.finite("means", means);
    Arguments.finite("fitted", fitted);
    Arguments.countAtLeast("parameters", parameters, 0);
    Arguments.atLeast(
        "means", means.length, parameters + 1, "lack of fit of " + parameters + " parameters");
    double squares = 0;
    for (int i = 0; i < means.length; i++) {
      squares += counts[i] * (means[i] - fitted[i]) * (means[i] - fitted[i]);
    }
    int freedom = means.length - parameters;
    return ofMeanSquares(
        squares / freedom, freedom, repeatability.variance(), repeatability.degreesOfFreedom());
  }

  /**
   * Probability of so large a ratio when both estimate the same variance.
   *
   * @return p
   */
  public double pValue() {
    return statistic == Double.POSITIVE_INFINITY
        ? 0
        : Quantiles.fTail(statistic, numeratorDegreesOfFreedom, denominatorDegreesOfFreedom);
  }
}
