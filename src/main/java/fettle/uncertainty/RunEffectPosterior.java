package fettle.uncertainty;

import java.util.ArrayList;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;

/**
 * Standard deviation σ_a of the effects of measuring runs that are crossed with blocks: a run
 * shifts all blocks read in it together.
 *
 * <pre>  ȳ_ik = μ_i + a_k + ε_ik,   var a_k = σ_a²,   var ε_ik = σ_ab² + σ_e² / n_ik</pre>
 *
 * <p><b>Likelihood:</b> restricted; block means are fixed effects and projected out, which leaves
 * the K × K matrix A = ZᵀMZ and the vector b = ZᵀMy, M the residual projector weighted by 1/var ε.
 * In the eigenbasis of A: L(σ) = −½ Σ_j [ln(1 + σ²λ_j) − σ² c_j² / (1 + σ²λ_j)]. <b>Prior:</b> √√(Σ
 * (λ_j / (1 + σ²λ_j))²), flat for small σ and 1/σ for large, so that a balanced layout tends to K −
 * 1 degrees of freedom (see {@link BetweenBlockScatter}). <b>Cost:</b> O(cells + K³). Missing cells
 * are allowed.
 *
 * @see "S. R. Searle, G. Casella, C. E. McCulloch, Variance Components (1992), section 6.6"
 * @param restricted the maximum of the restricted likelihood, 0 or above
 * @param nodes posterior of σ_a: weights sum to 1
 */
public record RunEffectPosterior(double restricted, List<Node> nodes) {
  private static final int NODES = 10;
  private static final GaussRule RULE = GaussRule.of(NODES);
  private static final int SCAN = 200;
  private static final double CUT = 14;

  /**
   * One value with its posterior weight.
   *
   * @param sigma σ_a
   * @param weight posterior probability
   */
  public record Node(double sigma, double weight) {}

  /**
   * Estimates σ_a.
   *
   * @param cellMeans mean of each cell, [block][run]; NaN where the cell is empty
   * @param cellVariances var ε of each cell mean, same shape, above 0
   * @return estimate and posterior
   */
  public static RunEffectPosterior of(double[][] cellMeans, double[][] cellVariances) {
    int runs = cellMeans[0].length;
    DMatrixRMaj a = new DMatrixRMaj(runs, runs);
    double[] b = new double[runs];
    for (int i = 0; i < cellMeans.length; i++) {
      double total = 0;
      double mean = 0;
      for (int k = 0; k < runs; k++) {
        if (!Double.isNaN(cellMeans[i][k])) {
          total += 1 / cellVariances[i][k];
          mean += cellMeans[i][k] / cellVariances[i][k];
        }
      }
      mean /= total;
      for (int k = 0; k < runs; k++) {
        if (Double.isNaN(cellMeans[i][k])) {
          continue;
        }
        double weight = 1 / cellVariances[i][k];
        b[k] += weight * (cellMeans[i][k] - mean);
        a.add(k, k, weight);
        for (int l = 0; l < runs; l++) {
          if (!Double.isNaN(cellMeans[i][l])) {
            a.add(k, l, -weight / cellVariances[i][l] / total);
          }
        }
      }
    }
    return of(a, b);
  }

  private static RunEffectPosterior of(DMatrixRMaj a, double[] b) {
    int runs = b.length;
    var eigen = DecompositionFactory_DDRM.eig(runs, true, true);
    if (!eigen.decompose(a.copy())) {
      throw new IllegalStateException("eigenvalues of a " + runs + " × " + runs + " matrix failed");
    }
    double largest = 0;
    for (int j = 0; j < runs; j++) {
      largest = Math.max(largest, eigen.getEigenvalue(j).getReal());
    }
    double[] lambda = new double[runs];
    double[] square = new double[runs];
    int free = 0;
    for (int j = 0; j < runs; j++) {
      double value = eigen.getEigenvalue(j).getReal();
      // The constant shift of all runs is absorbed by the block means: eigenvalue 0.
      if (value > 1e-10 * largest) {
        double projection = 0;
        for (int k = 0; k < runs; k++) {
          projection += eigen.getEigenVector(j).get(k) * b[k];
        }
        lambda[free] = value;
        square[free++] = projection * projection;
      }
    }
    return marginal(java.util.Arrays.copyOf(lambda, free), java.util.Arrays.copyOf(square, free));
  }

  private static RunEffectPosterior marginal(double[] lambda, double[] square) {
    double moment = 0;
    double information = 0;
    for (int j = 0; j < lambda.length; j++) {
      moment += square[j] / lambda[j];
      information += lambda[j];
    }
    double unit = Math.sqrt(Math.max(lambda.length, moment) / Math.max(information, 1e-300));
    double best = Double.NEGATIVE_INFINITY;
    double bestLikelihood = 0;
    double restricted = 0;
    double[] density = new double[SCAN];
    for (int k = 0; k < SCAN; k++) {
      double x = (k + 0.5) / SCAN;
      double sigma = unit * x / (1 - x);
      double likelihood = logLikelihood(sigma, lambda, square);
      if (likelihood > bestLikelihood) {
        bestLikelihood = likelihood;
        restricted = sigma;
      }
      density[k] = logPosterior(sigma, lambda, square) - 2 * StrictMath.log(1 - x);
      best = Math.max(best, density[k]);
    }
    int first = 0;
    while (density[first] < best - CUT) {
      first++;
    }
    int last = SCAN - 1;
    while (density[last] < best - CUT) {
      last--;
    }
    double from = Math.max(0, first - 0.5) / SCAN;
    double to = Math.min(SCAN, last + 1.5) / SCAN;
    double[] logs = new double[NODES];
    double top = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < NODES; k++) {
      double x = from + (to - from) * RULE.point(k);
      logs[k] =
          logPosterior(unit * x / (1 - x), lambda, square)
              - 2 * StrictMath.log(1 - x)
              + StrictMath.log(RULE.weight(k));
      top = Math.max(top, logs[k]);
    }
    double total = 0;
    for (double log : logs) {
      total += StrictMath.exp(log - top);
    }
    List<Node> nodes = new ArrayList<>();
    for (int k = 0; k < NODES; k++) {
      double x = from + (to - from) * RULE.point(k);
      nodes.add(new Node(unit * x / (1 - x), StrictMath.exp(logs[k] - top) / total));
    }
    return new RunEffectPosterior(refined(restricted, unit, lambda, square), nodes);
  }

  /** Golden section about the best point of the scan. */
  private static double refined(double guess, double unit, double[] lambda, double[] square) {
    if (guess == 0) {
      return 0;
    }
    double low = 0.8 * guess;
    double high = 1.25 * guess;
    for (int k = 0; k < 80; k++) {
      double a = low + 0.3819660112501051 * (high - low);
      double b = high - 0.3819660112501051 * (high - low);
      if (logLikelihood(a, lambda, square) >= logLikelihood(b, lambda, square)) {
        high = b;
      } else {
        low = a;
      }
    }
    double sigma = 0.5 * (low + high);
    return logLikelihood(sigma, lambda, square) > 0 && sigma > 1e-9 * unit ? sigma : 0;
  }

  /** Restricted log-likelihood against σ = 0. */
  private static double logLikelihood(double sigma, double[] lambda, double[] square) {
    double sum = 0;
    double variance = sigma * sigma;
    for (int j = 0; j < lambda.length; j++) {
      double factor = 1 + variance * lambda[j];
      sum += StrictMath.log(factor) - variance * square[j] / factor;
    }
    return -0.5 * sum;
  }

  private static double logPosterior(double sigma, double[] lambda, double[] square) {
    double information = 0;
    for (double value : lambda) {
      double share = value / (1 + sigma * sigma * value);
      information += share * share;
    }
    return logLikelihood(sigma, lambda, square) + 0.25 * StrictMath.log(information);
  }
}
