package fettle.uncertainty;

/**
 * The law of propagation of uncertainty with correlated inputs and several outputs, to first order:
 * V_y = C V_x Cᵀ (JCGM 100:2008, 5.2.2 and H.2.3; JCGM 102:2011, 6.2).
 *
 * <p><b>Shapes:</b> n inputs, k outputs; matrices are arrays of rows.
 */
public final class LawOfPropagation {
  private LawOfPropagation() {}

  /**
   * Covariance of the outputs.
   *
   * @param sensitivities C, k × n: derivative of each output by each input
   * @param covariance V_x of the inputs, n × n
   * @return V_y, k × k
   */
  public static double[][] covariance(double[][] sensitivities, double[][] covariance) {
    int outputs = sensitivities.length;
    int inputs = covariance.length;
    double[][] result = new double[outputs][outputs];
    for (int a = 0; a < outputs; a++) {
      if (sensitivities[a].length != inputs) {
        throw new IllegalArgumentException(
            "row "
                + a
                + " of sensitivities has length "
                + sensitivities[a].length
                + ": "
                + inputs
                + " expected");
      }
      for (int b = 0; b <= a; b++) {
        double sum = 0;
        for (int i = 0; i < inputs; i++) {
          double row = 0;
          for (int j = 0; j < inputs; j++) {
            row += covariance[i][j] * sensitivities[b][j];
          }
          sum += sensitivities[a][i] * row;
        }
        result[a][b] = sum;
        result[b][a] = sum;
      }
    }
    return result;
  }

  /**
   * Correlation coefficient of two quantities.
   *
   * @param covariance their covariance matrix
   * @param i first index
   * @param j second index
   * @return between −1 and 1; NaN where one of them has no uncertainty
   */
  public static double correlation(double[][] covariance, int i, int j) {
    return covariance[i][j] / Math.sqrt(covariance[i][i] * covariance[j][j]);
  }
}
