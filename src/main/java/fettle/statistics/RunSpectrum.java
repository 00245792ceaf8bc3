package fettle.statistics;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/** Eigenvalues and directions of a reduced run matrix, without those that blocks absorb. */
final class RunSpectrum {
  /** Eigenvalues at this share of the largest are zero: one for each connected part. */
  private static final double NOTHING = 1e-10;

  final int rank;
  final double[] value;

  /** Squared component of r along each direction. */
  final double[] power;

  private final double[] component;
  private final double[][] direction;

  RunSpectrum(CrossedCells.Reduced reduced) {
    int runs = reduced.vector().length;
    EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(runs, true, true);
    if (!eigen.decompose(reduced.matrix().copy())) {
      throw new ArithmeticException(
          "eigenvalues of a " + runs + " by " + runs + " run matrix not found");
    }
    double largest = 0;
    for (int j = 0; j < runs; j++) {
      largest = Math.max(largest, eigen.getEigenvalue(j).getReal());
    }
    double[] values = new double[runs];
    double[] powers = new double[runs];
    double[] components = new double[runs];
    double[][] directions = new double[runs][];
    int kept = 0;
    for (int j = 0; j < runs; j++) {
      double lambda = eigen.getEigenvalue(j).getReal();
      if (lambda > NOTHING * largest) {
        values[kept] = lambda;
        directions[kept] = eigen.getEigenVector(j).getData().clone();
        for (int k = 0; k < runs; k++) {
          components[kept] += directions[kept][k] * reduced.vector()[k];
        }
        powers[kept] = components[kept] * components[kept];
        kept++;
      }
    }
    rank = kept;
    value = Arrays.copyOf(values, kept);
    power = Arrays.copyOf(powers, kept);
    component = components;
    direction = directions;
  }

  /** Σ_j q_j (q_jᵀ r) · gain_j. */
  double[] combination(double[] gain) {
    double[] sum = new double[rank == 0 ? 0 : direction[0].length];
    for (int j = 0; j < rank; j++) {
      for (int k = 0; k < sum.length; k++) {
        sum[k] += direction[j][k] * component[j] * gain[j];
      }
    }
    return sum;
  }

  /** Σ_j q_j q_jᵀ / λ_j. */
  double[][] pseudoInverse() {
    int runs = direction[0].length;
    double[][] g = new double[runs][runs];
    for (int j = 0; j < rank; j++) {
      for (int k = 0; k < runs; k++) {
        for (int l = 0; l < runs; l++) {
          g[k][l] += direction[j][k] * direction[j][l] / value[j];
        }
      }
    }
    return g;
  }
}
