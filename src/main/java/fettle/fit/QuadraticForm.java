package fettle.fit;

/** The quadratic form xᵀ A x of a small symmetric matrix. */
public final class QuadraticForm {
  private QuadraticForm() {}

  /**
   * xᵀ A x.
   *
   * @param x holds the vector from index {@code from} on
   * @param from first index of the vector in x
   * @param a symmetric p × p matrix, row-major
   * @param p order
   * @return the value
   */
  public static double of(double[] x, int from, double[] a, int p) {
    double sum = 0;
    for (int i = 0; i < p; i++) {
      double row = 0;
      for (int j = 0; j < i; j++) {
        row += a[i * p + j] * x[from + j];
      }
      sum += x[from + i] * (2 * row + a[i * p + i] * x[from + i]);
    }
    return sum;
  }
}
