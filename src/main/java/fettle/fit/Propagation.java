package fettle.fit;

/** The law of propagation of uncertainty in matrix form, JCGM 102:2011 clause 6. */
final class Propagation {
  private Propagation() {}

  /** C V Cᵀ for a p × p matrix of sensitivities and a p × p covariance, both row-major. */
  static double[] sandwich(double[] sensitivities, double[] covariance, int p) {
    double[] half = new double[p * p];
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        double sum = 0;
        for (int k = 0; k < p; k++) {
          sum += sensitivities[i * p + k] * covariance[k * p + j];
        }
        half[i * p + j] = sum;
      }
    }
    double[] result = new double[p * p];
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        double sum = 0;
        for (int k = 0; k < p; k++) {
          sum += half[i * p + k] * sensitivities[j * p + k];
        }
        result[i * p + j] = sum;
      }
    }
    return result;
  }
}
