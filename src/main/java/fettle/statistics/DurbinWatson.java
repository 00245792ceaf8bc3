package fettle.statistics;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;
import org.ejml.interfaces.decomposition.QRDecomposition;

/**
 * Durbin and Watson's test for serial correlation of residuals, with its exact p.
 *
 * <pre>  d = Σ (e_{i+1} − e_i)² / Σ e_i²</pre>
 *
 * Under independent normal errors d is a ratio of quadratic forms whose weights are the eigenvalues
 * of NᵀAN, N an orthonormal basis of what the design leaves over and A the matrix of squared
 * differences; P(d below the observed) is computed from them without approximation.
 *
 * <p>Cost: O(n³).
 *
 * @param statistic d, 0 to 4; 2 when there is no serial correlation
 * @param positivePValue probability of so small a d: small for positive serial correlation
 * @see "J. Durbin, G. S. Watson, Testing for serial correlation in least squares regression,
 *     Biometrika 37 (1950) 409 and 38 (1951) 159"
 */
public record DurbinWatson(double statistic, double positivePValue) {
  /**
   * Of a linear regression whose observations stand in their order in time.
   *
   * @param fit a regression with residuals that are not all zero
   * @return d and its exact p
   */
  public static DurbinWatson of(LinearRegression fit) {
    double d = statistic(fit.residuals());
    double[] weights = weights(fit.designMatrix());
    for (int j = 0; j < weights.length; j++) {
      weights[j] -= d;
    }
    return new DurbinWatson(d, NormalQuadraticForm.negativeProbability(weights));
  }

  /**
   * d of any residuals.
   *
   * @param residuals at least 3 finite values in order, not all zero
   * @return d
   */
  public static double statistic(double[] residuals) {
    Arguments.atLeast("residuals", residuals.length, 3, "the Durbin–Watson statistic");
    Arguments.finite("residuals", residuals);
    double steps = 0;
    double squares = residuals[0] * residuals[0];
    for (int i = 1; i < residuals.length; i++) {
      double step = residuals[i] - residuals[i - 1];
      steps += step * step;
      squares += residuals[i] * residuals[i];
    }
    if (squares == 0) {
      throw Arguments.noSpread("residuals", residuals.length, 0, "the Durbin–Watson statistic");
    }
    return steps / squares;
  }

  private static double[] weights(DMatrixRMaj design) {
    int n = design.numRows;
    int p = design.numCols;
    QRDecomposition<DMatrixRMaj> qr = DecompositionFactory_DDRM.qr(n, p);
    qr.decompose(design);
    DMatrixRMaj q = qr.getQ(null, false);
    int left = n - p;
    DMatrixRMaj differences = new DMatrixRMaj(n - 1, left);
    for (int i = 0; i < n - 1; i++) {
      for (int j = 0; j < left; j++) {
        differences.set(i, j, q.get(i + 1, p + j) - q.get(i, p + j));
      }
    }
    DMatrixRMaj form = new DMatrixRMaj(left, left);
    CommonOps_DDRM.multTransA(differences, differences, form);
    EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(left, false, true);
    if (!eigen.decompose(form)) {
      throw new ArithmeticException("eigenvalues of a " + left + " by " + left + " form not found");
    }
    double[] weights = new double[left];
    for (int j = 0; j < left; j++) {
      weights[j] = eigen.getEigenvalue(j).getReal();
    }
    return weights;
  }

  /**
   * Probability of so large a d: small for negative serial correlation.
   *
   * @return 1 − the positive p
   */
  public double negativePValue() {
    return 1 - positivePValue;
  }

  /**
   * Two-sided p.
   *
   * @return twice the smaller p, at most 1
   */
  public double pValue() {
    return Math.min(1, 2 * Math.min(positivePValue, negativePValue()));
  }
}
