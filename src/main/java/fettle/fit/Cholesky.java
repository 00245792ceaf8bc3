package fettle.fit;

/**
 * Cholesky decomposition A = L Lᵀ of a small symmetric positive definite matrix, in place.
 *
 * <p><b>Storage:</b> row-major n × n; only the lower triangle is read and overwritten by L.
 * <b>Cost:</b> n³/3 flops. Own code because the same few lines run inside every iteration of every
 * Monte Carlo trial, where a general matrix library's checks and allocations would dominate; the
 * matrices are 2 to 60 wide.
 *
 * @see "G. H. Golub, C. F. Van Loan, Matrix Computations, 4th ed. (2013), algorithm 4.2.1"
 */
final class Cholesky {
  private Cholesky() {}

  /**
   * Decomposes.
   *
   * @param a matrix, row-major, overwritten
   * @param n its order
   * @return the smallest ratio L_kk² / A_kk met, a cheap measure of how nearly singular A is; 0
   *     when A is not positive definite (then a is spoiled)
   */
  static double decompose(double[] a, int n) {
    double smallest = 1;
    for (int j = 0; j < n; j++) {
      int rowJ = j * n;
      double diagonal = a[rowJ + j];
      double pivot = diagonal;
      for (int k = 0; k < j; k++) {
        pivot -= a[rowJ + k] * a[rowJ + k];
      }
      if (!(pivot > 0) || Double.isInfinite(pivot)) {
        return 0;
      }
      smallest = Math.min(smallest, pivot / diagonal);
      double root = Math.sqrt(pivot);
      a[rowJ + j] = root;
      for (int i = j + 1; i < n; i++) {
        int rowI = i * n;
        double sum = a[rowI + j];
        for (int k = 0; k < j; k++) {
          sum -= a[rowI + k] * a[rowJ + k];
        }
        a[rowI + j] = sum / root;
      }
    }
    return smallest;
  }

  /** Solves L Lᵀ x = b in place. */
  static void solve(double[] l, int n, double[] b) {
    forward(l, n, b);
    for (int i = n - 1; i >= 0; i--) {
      double sum = b[i];
      for (int k = i + 1; k < n; k++) {
        sum -= l[k * n + i] * b[k];
      }
      b[i] = sum / l[i * n + i];
    }
  }

  /** Solves L x = b in place. */
  static void forward(double[] l, int n, double[] b) {
    for (int i = 0; i < n; i++) {
      double sum = b[i];
      for (int k = 0; k < i; k++) {
        sum -= l[i * n + k] * b[k];
      }
      b[i] = sum / l[i * n + i];
    }
  }
}
