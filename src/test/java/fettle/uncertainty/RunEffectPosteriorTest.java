package fettle.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.analysis.integration.SimpsonIntegrator;
import org.junit.jupiter.api.Test;

/**
 * The run effect of a balanced layout, for which the analysis of variance gives the restricted
 * likelihood's maximum in closed form: σ_a² = (MS_run − MS_residual) / number of blocks for cell
 * means, where the residual mean square is the known variance of a cell (S. R. Searle, G. Casella,
 * C. E. McCulloch, Variance Components, 1992, section 4.6; the variance of cells is known here).
 */
class RunEffectPosteriorTest {
  private static final int BLOCKS = 8;
  private static final int RUNS = 6;
  private static final double CELL = 0.7;

  private static double[][] draw(double runs, long seed) {
    Random random = new Random(seed);
    double[] shift = new double[RUNS];
    for (int k = 0; k < RUNS; k++) {
      shift[k] = runs * random.nextGaussian();
    }
    double[][] means = new double[BLOCKS][RUNS];
    for (int i = 0; i < BLOCKS; i++) {
      for (int k = 0; k < RUNS; k++) {
        means[i][k] = 100 + 10 * i + shift[k] + CELL * random.nextGaussian();
      }
    }
    return means;
  }

  private static double[][] variances() {
    double[][] variances = new double[BLOCKS][RUNS];
    for (double[] row : variances) {
      java.util.Arrays.fill(row, CELL * CELL);
    }
    return variances;
  }

  /** Mean square of run means, in units of a cell. */
  private static double runMeanSquare(double[][] means) {
    double[] column = new double[RUNS];
    double grand = 0;
    for (double[] row : means) {
      for (int k = 0; k < RUNS; k++) {
        column[k] += row[k] / BLOCKS;
        grand += row[k] / BLOCKS / RUNS;
      }
    }
    double sum = 0;
    for (double mean : column) {
      sum += (mean - grand) * (mean - grand);
    }
    return BLOCKS * sum / (RUNS - 1);
  }

  @Test
  void restrictedMaximumOfABalancedLayout() {
    for (long seed = 1; seed <= 20; seed++) {
      double[][] means = draw(0.6, seed);
      double expected = Math.sqrt(Math.max(0, (runMeanSquare(means) - CELL * CELL) / BLOCKS));
      assertEquals(
          expected,
          RunEffectPosterior.of(means, variances()).restricted(),
          1e-6 * expected,
          "seed " + seed);
    }
  }

  @Test
  void noRunEffectGivesZero() {
    double[][] means = new double[BLOCKS][RUNS];
    for (int i = 0; i < BLOCKS; i++) {
      for (int k = 0; k < RUNS; k++) {
        means[i][k] = 100 + 10 * i + ((i + k) % 2 == 0 ? 0.1 : -0.1);
      }
    }
    assertEquals(0, RunEffectPosterior.of(means, variances()).restricted());
  }

  @Test
  void posteriorMomentsAgainstFineIntegration() {
    // Balanced: all eigenvalues of the runs' information equal BLOCKS / CELL², so the likelihood is
    // (1 + σ²λ)^(−(K−1)/2) exp(−S / (2 (1 + σ²λ))) and the prior 1 / √(1 + σ²λ).
    double[][] means = draw(0.6, 3);
    double lambda = BLOCKS / (CELL * CELL);
    double s = runMeanSquare(means) * (RUNS - 1) / (CELL * CELL);
    double[] moments = new double[2];
    for (int power = 0; power < 2; power++) {
      int n = power;
      moments[power] =
          new SimpsonIntegrator(1e-10, 1e-14, 12, 40)
              .integrate(
                  10_000_000,
                  x -> {
                    double sigma = x / (1 - x);
                    double f = 1 + sigma * sigma * lambda;
                    return StrictMath.pow(sigma, n)
                        / Math.sqrt(f)
                        * StrictMath.pow(f, -0.5 * (RUNS - 1))
                        * StrictMath.exp(-0.5 * s / f + 0.5 * s)
                        / ((1 - x) * (1 - x))
                        * StrictMath.exp(-0.5 * s);
                  },
                  0,
                  0.9999);
    }
    double mean = 0;
    double total = 0;
    for (RunEffectPosterior.Node node : RunEffectPosterior.of(means, variances()).nodes()) {
      mean += node.weight() * node.sigma();
      total += node.weight();
    }
    assertEquals(1, total, 1e-12);
    assertEquals(moments[1] / moments[0], mean, 5e-3 * mean);
  }

  @Test
  void missingCellsAreAllowed() {
    double[][] means = draw(2, 4);
    double full = RunEffectPosterior.of(means, variances()).restricted();
    means[0][0] = Double.NaN;
    means[5][3] = Double.NaN;
    double rest = RunEffectPosterior.of(means, variances()).restricted();
    assertTrue(Math.abs(rest - full) < 0.2 * full, rest + " against " + full);
  }
}
