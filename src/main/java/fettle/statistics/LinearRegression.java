package fettle.statistics;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.QRDecomposition;

/**
 * Ordinary least squares {@code y = X b + e} for a general design matrix, by Householder QR of the
 * columns scaled to unit length.
 *
 * <p><b>Shapes:</b> X has n rows of p columns (the constant, if wanted, is a column of ones), n
 * above p. Arrays are read, neither kept nor changed. <b>Uncertainties:</b> scaled by s² = RSS/(n −
 * p). <b>Cost:</b> O(n p²). <b>Fails</b> when the columns are linearly dependent (a diagonal
 * element of R below n · 2.2e-16).
 *
 * @see "G. H. Golub, C. F. Van Loan, Matrix Computations, 5.3"
 */
public final class LinearRegression {
  private final double[][] design;
  private final double[] response;
  private final double[] coefficients;
  private final double[] standardErrors;
  private final double[] residuals;
  private final double[] leverages;
  private final double residualSumOfSquares;

  private LinearRegression(double[][] x, double[] y) {
    int n = x.length;
    int p = x[0].length;
    design = x;
    response = y;
    double[] length = new double[p];
    DMatrixRMaj scaled = new DMatrixRMaj(n, p);
    for (int j = 0; j < p; j++) {
      for (double[] row : x) {
        length[j] = StrictMath.hypot(length[j], row[j]);
      }
      for (int i = 0; i < n; i++) {
        scaled.set(i, j, length[j] == 0 ? 0 : x[i][j] / length[j]);
      }
    }
    QRDecomposition<DMatrixRMaj> qr = DecompositionFactory_DDRM.qr(n, p);
    qr.decompose(scaled);
    DMatrixRMaj q = qr.getQ(null, true);
    DMatrixRMaj r = qr.getR(null, true);
    for (int j = 0; j < p; j++) {
      if (!(Math.abs(r.get(j, j)) > n * 0x1p-52)) {
        throw new IllegalArgumentException(
            "column " + j + " of the design is a combination of those before it");
      }
    }
    DMatrixRMaj inverse = new DMatrixRMaj(p, p);
    CommonOps_DDRM.invert(r, inverse);
    coefficients = solve(q, inverse, y);
    residuals = new double[n];
    leverages = new double[n];
    for (int i = 0; i < n; i++) {
      double fitted = 0;
      for (int j = 0; j < p; j++) {
        fitted += scaled.get(i, j) * coefficients[j];
        leverages[i] += q.get(i, j) * q.get(i, j);
      }
      residuals[i] = y[i] - fitted;
    }
    // one step of refinement: what of the residuals still lies in the columns goes to b
    double[] correction = solve(q, inverse, residuals);
    double squares = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < p; j++) {
        residuals[i] -= scaled.get(i, j) * correction[j];
      }
      squares += residuals[i] * residuals[i];
    }
    residualSumOfSquares = squares;
    standardErrors = new double[p];
    for (int j = 0; j < p; j++) {
      double sum = 0;
      for (int k = j; k < p; k++) {
        sum += inverse.get(j, k) * inverse.get(j, k);
      }
      coefficients[j] = (coefficients[j] + correction[j]) / length[j];
      standardErrors[j] = Math.sqrt(sum * squares / (n - p)) / length[j];
    }
  }

  private static double[] solve(DMatrixRMaj q, DMatrixRMaj inverse, double[] y) {
    int p = q.numCols;
    double[] projected = new double[p];
    for (int i = 0; i < y.length; i++) {
      for (int j = 0; j < p; j++) {
        projected[j] += q.get(i, j) * y[i];
      }
    }
    double[] b = new double[p];
    for (int j = 0; j < p; j++) {
      for (int k = j; k < p; k++) {
        b[j] += inverse.get(j, k) * projected[k];
      }
    }
    return b;
  }

  /**
   * Fits.
   *
   * @param design n rows of p finite numbers
   * @param response n finite numbers, n above p
   * @return the fit
   * @throws IllegalArgumentException if shapes do not agree, a number is not finite or the columns
   *     are linearly dependent
   */
  public static LinearRegression of(double[][] design, double[] response) {
    Arguments.sameLength("design", design.length, "response", response.length);
    Arguments.atLeast("response", response.length, 2, "a regression");
    int p = design[0].length;
    Arguments.countAtLeast("columns of the design", p, 1);
    double[][] copy = new double[design.length][];
    for (int i = 0; i < design.length; i++) {
      Arguments.sameLength("design[" + i + "]", design[i].length, "design[0]", p);
      copy[i] = design[i].clone();
    }
    Arguments.finite("design", copy);
    Arguments.finite("response", response);
    Arguments.atLeast("response", response.length, p + 1, "a regression on " + p + " columns");
    return new LinearRegression(copy, response.clone());
  }

  /**
   * Fits a straight line.
   *
   * @param x abscissae, not all equal
   * @param y ordinates, at least 3
   * @return the fit, intercept first
   */
  public static LinearRegression line(double[] x, double[] y) {
    Arguments.sameLength("x", x.length, "y", y.length);
    double[][] design = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      design[i] = new double[] {1, x[i]};
    }
    return of(design, y);
  }

  /**
   * Number of observations.
   *
   * @return n
   */
  public int size() {
    return response.length;
  }

  /**
   * Number of coefficients.
   *
   * @return p
   */
  public int parameters() {
    return coefficients.length;
  }

  /**
   * Degrees of freedom of the residuals.
   *
   * @return n − p
   */
  public int degreesOfFreedom() {
    return size() - parameters();
  }

  /**
   * Coefficients in the order of the columns.
   *
   * @return a copy
   */
  public double[] coefficients() {
    return coefficients.clone();
  }

  /**
   * Standard errors of the coefficients, scaled by the residual variance.
   *
   * @return a copy
   */
  public double[] standardErrors() {
    return standardErrors.clone();
  }

  /**
   * Residuals, observed less fitted.
   *
   * @return a copy
   */
  public double[] residuals() {
    return residuals.clone();
  }

  /**
   * Diagonal of the hat matrix.
   *
   * @return a copy
   */
  public double[] leverages() {
    return leverages.clone();
  }

  /**
   * Sum of squared residuals.
   *
   * @return RSS
   */
  public double residualSumOfSquares() {
    return residualSumOfSquares;
  }

  /**
   * Residual standard deviation.
   *
   * @return √(RSS/(n − p))
   */
  public double residualStandardDeviation() {
    return Math.sqrt(residualSumOfSquares / degreesOfFreedom());
  }

  /**
   * Share of the variation about the mean that is explained; meaningful with a constant column.
   *
   * @return 1 − RSS/total sum of squares
   */
  public double rSquared() {
    return 1 - residualSumOfSquares / totalSumOfSquares();
  }

  double totalSumOfSquares() {
    return Moments.squaredDeviations(response, Moments.mean(response));
  }

  /** The design as a matrix. */
  DMatrixRMaj designMatrix() {
    return new DMatrixRMaj(design);
  }
}
