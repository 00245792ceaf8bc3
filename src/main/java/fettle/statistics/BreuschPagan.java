package fettle.statistics;

/**
 * Breusch and Pagan's test for a residual variance that depends on given variables, in the original
 * and in Koenker's studentized form.
 *
 * <p>The squared residuals are regressed on the variables. Original: half the explained sum of
 * squares of e²/(RSS/n), right for normal errors only. Studentized: n R², for others too. Both
 * follow χ² approximately.
 *
 * @param original statistic of 1979
 * @param studentized Koenker's statistic
 * @param degreesOfFreedom number of variables
 * @see "T. S. Breusch, A. R. Pagan, Econometrica 47 (1979) 1287"
 * @see "R. Koenker, A note on studentizing a test for heteroscedasticity, J. Econom. 17 (1981) 107"
 */
public record BreuschPagan(double original, double studentized, int degreesOfFreedom) {
  /**
   * Tests residuals.
   *
   * @param residuals n finite values, not all of one size
   * @param variables n rows of the variables that may govern the variance, without the constant,
   *     which is added here
   * @return both statistics
   */
  public static BreuschPagan of(double[] residuals, double[][] variables) {
    Arguments.sameLength("residuals", residuals.length, "variables", variables.length);
    Arguments.atLeast("residuals", residuals.length, 3, "the Breusch–Pagan test");
    Arguments.finite("residuals", residuals);
    int n = residuals.length;
    int k = variables[0].length;
    double[][] design = new double[n][k + 1];
    double[] squares = new double[n];
    for (int i = 0; i < n; i++) {
      Arguments.sameLength("variables[" + i + "]", variables[i].length, "variables[0]", k);
      design[i][0] = 1;
      System.arraycopy(variables[i], 0, design[i], 1, k);
      squares[i] = residuals[i] * residuals[i];
    }
    if (Moments.allEqual(squares)) {
      throw Arguments.noSpread("squared residuals", n, squares[0], "the Breusch–Pagan test");
    }
    double meanSquare = Moments.mean(squares);
    for (int i = 0; i < n; i++) {
      squares[i] /= meanSquare;
    }
    LinearRegression fit = LinearRegression.of(design, squares);
    double explained = fit.totalSumOfSquares() - fit.residualSumOfSquares();
    return new BreuschPagan(0.5 * explained, n * fit.rSquared(), k);
  }

  /**
   * p of the original statistic.
   *
   * @return upper tail of χ²
   */
  public double originalPValue() {
    return Quantiles.chiSquaredTail(original, degreesOfFreedom);
  }

  /**
   * p of the studentized statistic.
   *
   * @return upper tail of χ²
   */
  public double studentizedPValue() {
    return Quantiles.chiSquaredTail(studentized, degreesOfFreedom);
  }
}
