package fettle.fit;

/**
 * A measurement function h = g(r; β): hardness from response.
 *
 * <p>The parameters β here are the ones the solver works with (centred and scaled, so that they are
 * well determined); {@link #reported} turns them into the coefficients that people and instruments
 * know. Implementations are immutable.
 *
 * <p><b>Units:</b> r in the response unit, h in the hardness scale's unit.
 */
public interface ResponseModel {
  /**
   * The model's name.
   *
   * @return for example {@code log-polynomial-2}
   */
  String id();

  /**
   * Number of parameters p.
   *
   * @return at least 1
   */
  int parameterCount();

  /**
   * Hardness, slope and parameter gradient at one response.
   *
   * @param r response
   * @param beta parameters, length p
   * @param out filled with g, dg/dr, dg/dβ_0 … dg/dβ_{p−1}; length p + 2 or more. Outside the
   *     domain entries are NaN or infinite, never a silent substitute
   */
  void linearise(double r, double[] beta, double[] out);

  /**
   * Hardness at one response.
   *
   * @param r response
   * @param beta parameters, length p
   * @return g(r; β)
   */
  double value(double r, double[] beta);

  /**
   * A first guess from points without regard to their uncertainties.
   *
   * @param responses length n
   * @param hardnesses length n
   * @return parameters from which the solver may start
   * @throws FitFailedException if a value lies outside the model's domain or the points do not
   *     determine the parameters
   */
  double[] start(double[] responses, double[] hardnesses) throws FitFailedException;

  /**
   * The coefficients in the raw response's units.
   *
   * @param beta parameters, length p
   * @param covariance their covariance, p × p row-major
   * @return named coefficients with covariance, first-order where the map is not linear
   */
  ReportedCoefficients reported(double[] beta, double[] covariance);

  /**
   * Whether hardness is strictly monotone in the response between two responses, proven.
   *
   * @param beta parameters
   * @param low lower end
   * @param high upper end, above low
   * @return the verdict
   */
  Monotonicity monotonicity(double[] beta, double low, double high);
}
