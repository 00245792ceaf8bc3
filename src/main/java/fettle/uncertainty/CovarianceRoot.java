package fettle.uncertainty;

import org.apache.commons.rng.sampling.distribution.SharedStateContinuousSampler;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;

/** A square root of a covariance matrix, for drawing correlated normal vectors. */
final class CovarianceRoot {
  private CovarianceRoot() {}

  /**
   * R with R Rᵀ = C from the eigenvalues, negative rounding errors taken as 0 (JCGM 101:2008, 6.4.8
   * uses Cholesky; the eigenvalue root also takes singular matrices).
   */
  static double[] of(double[] covariance, int p) {
    var eigen = DecompositionFactory_DDRM.eig(p, true, true);
    if (!eigen.decompose(new DMatrixRMaj(p, p, true, covariance))) {
      throw new IllegalStateException("eigenvalues of a " + p + " × " + p + " covariance failed");
    }
    double[] root = new double[p * p];
    for (int j = 0; j < p; j++) {
      double scale = Math.sqrt(Math.max(0, eigen.getEigenvalue(j).getReal()));
      DMatrixRMaj vector = eigen.getEigenVector(j);
      for (int i = 0; i < p; i++) {
        root[i * p + j] = scale * vector.get(i);
      }
    }
    return root;
  }

  /** Draws one vector about a mean. */
  static void draw(
      double[] mean, double[] root, SharedStateContinuousSampler normal, double[] out) {
    int p = mean.length;
    System.arraycopy(mean, 0, out, 0, p);
    for (int j = 0; j < p; j++) {
      double z = normal.sample();
      for (int i = 0; i < p; i++) {
        out[i] += root[i * p + j] * z;
      }
    }
  }
}
