package fettle.statistics;

import static fettle.statistics.Cases.assertRelative;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class CrossedRunEffectTest {
  private static final int[] BLOCK = {0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 4, 4, 4};
  private static final int[] RUN = {0, 1, 2, 3, 0, 1, 3, 0, 1, 2, 3, 1, 2, 3, 0, 1, 2};
  private static final double[] MEAN = {
    197.14, 201.56, 204.25, 199.06, 248.93, 252.98, 250.76, 307.76, 309.44, 313.58, 310.68, 370.4,
    376.18, 369.62, 421.13, 420.05, 423.66
  };
  private static final int[] COUNT = {2, 3, 5, 3, 2, 2, 4, 2, 3, 4, 2, 2, 5, 4, 3, 2, 5};

  // Dense reference in NumPy 2.4 and SciPy 1.17 on the 17 cells above, se2 = 4.4: W = diag(n),
  // F = [X Z], M = W - W F pinv(F'WF) F'W, sab = (y'My - se2 tr(M W^-1))/tr(M);
  // V = diag(sab + se2/n) + s^2 ZZ', P = V^-1 - V^-1 X (X'V^-1 X)^-1 X'V^-1,
  // ll = -((N-I) ln 2π + slogdet(V) + slogdet(X'V^-1 X) + y'Py)/2; variance by
  // scipy.optimize.brentq on tr(Z'PZ) = |Z'Py|²; effects s^2 Z'Py.
  @Test
  void agreesWithDenseMatrices() {
    CrossedRunEffect e = CrossedRunEffect.of(BLOCK, RUN, MEAN, COUNT, 4.4, 36);
    assertEquals(9, e.interactionDegreesOfFreedom());
    assertRelative(0.364101663015261, e.interactionVariance(), 1e-9);
    assertRelative(5.736079245479036, e.runVariance(), 1e-10);
    assertRelative(15.136473062446374, e.runTest().statistic(), 1e-9);
    assertEquals(3, e.runTest().numeratorDegreesOfFreedom());
    assertRelative(1.2412481418243368, e.interactionTest().statistic(), 1e-9);
    assertArrayEquals(
        new double[] {
          -43.947118353436466, -30.57191531442669, -27.92041852193564, -30.57907023084638
        },
        e.logLikelihood(new double[] {0, 1, 3, 10}),
        1e-8);
    assertArrayEquals(
        new double[] {
          -1.8912416179894973, -0.21105070295479555, 3.2924510485654355, -1.190158727619434
        },
        e.runEffects(),
        1e-9);
    assertEquals(5, e.blocks());
    assertEquals(4, e.runs());
  }

  @Test
  void cellsMayComeInAnyOrder() {
    int n = MEAN.length;
    int[] b = new int[n];
    int[] r = new int[n];
    int[] c = new int[n];
    double[] m = new double[n];
    for (int i = 0; i < n; i++) {
      int from = (7 * i + 3) % n;
      b[i] = BLOCK[from];
      r[i] = RUN[from];
      c[i] = COUNT[from];
      m[i] = MEAN[from];
    }
    CrossedRunEffect there = CrossedRunEffect.of(BLOCK, RUN, MEAN, COUNT, 4.4, 36);
    CrossedRunEffect back = CrossedRunEffect.of(b, r, m, c, 4.4, 36);
    assertRelative(there.runVariance(), back.runVariance(), 1e-10);
    assertRelative(there.logLikelihood(2), back.logLikelihood(2), 1e-12);
  }

  // For equal counts the estimates are those of the analysis of variance (Searle et al. 1992, 4.3).
  @Test
  void balancedLayoutGivesTheAnalysisOfVariance() {
    double[][] y = {{10, 13, 11}, {20, 22.5, 21.5}, {31, 33, 30.5}, {39.5, 43, 41}};
    int n = 4;
    CrossedRunEffect e = layout(y, n, 0.5, 36);
    double residual = 0;
    double[] runMean = new double[3];
    double grand = 0;
    for (double[] row : y) {
      for (int k = 0; k < 3; k++) {
        runMean[k] += row[k] / 4;
        grand += row[k] / 12;
      }
    }
    double runs = 0;
    for (int k = 0; k < 3; k++) {
      runs += (runMean[k] - grand) * (runMean[k] - grand) / 2;
    }
    for (double[] row : y) {
      double rowMean = Arrays.stream(row).average().orElseThrow();
      for (int k = 0; k < 3; k++) {
        double out = row[k] - rowMean - runMean[k] + grand;
        residual += out * out / 6;
      }
    }
    assertRelative(residual - 0.5 / n, e.interactionVariance(), 1e-12);
    assertRelative(runs - residual / 4, e.runVariance(), 1e-10);
    assertRelative(4 * runs / residual, e.runTest().statistic(), 1e-11);
    assertEquals(6, e.runTest().denominatorDegreesOfFreedom());
    assertEquals(0, Arrays.stream(e.runEffects()).sum(), 1e-12);
  }

  @Test
  void noRunEffectGivesZero() {
    double[][] y = {{1, 3, 2}, {12, 11, 13}, {23, 22, 21}};
    CrossedRunEffect e = layout(y, 1, 0, 0);
    assertEquals(0, e.runVariance());
    assertArrayEquals(new double[3], e.runEffects());
    assertTrue(e.logLikelihood(0) > e.logLikelihood(0.5));
  }

  // Two parts that share neither block nor run: both inform, one more degree of freedom is left.
  @Test
  void unconnectedPartsAreAllowed() {
    int[] block = {0, 0, 1, 1, 2, 2, 3, 3};
    int[] run = {0, 1, 0, 1, 2, 3, 2, 3};
    double[] mean = {1, 4, 11, 14.5, 20, 26, 31, 36};
    int[] count = {3, 3, 3, 3, 3, 3, 3, 3};
    CrossedRunEffect e = CrossedRunEffect.of(block, run, mean, count, 0.1, 16);
    assertEquals(2, e.interactionDegreesOfFreedom());
    assertEquals(2, e.runTest().numeratorDegreesOfFreedom());
    // differences between the two runs of a part: 3.25 and 5.5, each with variance 2 σ_a² + φ
    double phi = e.interactionVariance() + 0.1 / 3;
    double expected = (3.25 * 3.25 + 5.5 * 5.5) / 4 - phi / 2;
    assertRelative(expected, e.runVariance(), 1e-9);
  }

  // Mean of the estimates over 300 simulated layouts; standard deviation of one REML estimate on 9
  // degrees of freedom is about σ_a² √(2/9) = 0.47 σ_a²: four standard errors are 0.11 σ_a².
  @Test
  void estimatesAreUnbiased() {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(23);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(random);
    double sum = 0;
    double interaction = 0;
    int trials = 300;
    for (int t = 0; t < trials; t++) {
      double[][] y = new double[6][10];
      for (int k = 0; k < 10; k++) {
        double a = 2 * normal.sample();
        for (int i = 0; i < 6; i++) {
          y[i][k] = 100 * i + a + normal.sample() + normal.sample() / Math.sqrt(5);
        }
      }
      CrossedRunEffect e = layout(y, 5, 1, 240);
      sum += e.runVariance() / trials;
      interaction += e.interactionVariance() / trials;
    }
    assertEquals(4, sum, 4 * 0.12);
    // 45 degrees of freedom: 1.2 √(2/45)/√300 is 0.015
    assertEquals(1, interaction, 4 * 0.015);
  }

  @Test
  void largeLayoutsAreQuick() {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(29);
    double[][] y = new double[300][50];
    for (double[] row : y) {
      for (int k = 0; k < 50; k++) {
        row[k] = k % 7 + random.nextDouble();
      }
    }
    long start = System.nanoTime();
    CrossedRunEffect e = layout(y, 5, 0.05, 60_000);
    double[] grid = new double[2000];
    Arrays.setAll(grid, i -> 0.01 * i);
    assertTrue(Double.isFinite(e.logLikelihood(grid)[1999]));
    // k % 7 over 50 runs has the variance 4.1; takes about 50 ms
    assertEquals(4.1, e.runVariance(), 0.2);
    assertTrue(System.nanoTime() - start < 5_000_000_000L);
  }

  @Test
  void refusals() {
    refused(
        () -> CrossedRunEffect.of(new int[] {0, 1, 2}, new int[] {0, 0, 0}, three(), ones(), 1, 5),
        "run names 1 run: a run effect needs at least 2");
    refused(
        () -> CrossedRunEffect.of(new int[] {0, 1, 2}, new int[] {0, 1, 1}, three(), ones(), 1, 5),
        "no block has cells in two runs: runs cannot be told from blocks");
    refused(
        () -> CrossedRunEffect.of(new int[] {0, 0, 2}, new int[] {0, 1, 1}, three(), ones(), 1, 5),
        "block names no cell for index 1: indices must run from 0 without a gap");
    refused(
        () -> CrossedRunEffect.of(new int[] {0, 0, 0}, new int[] {0, 1, 1}, three(), ones(), 1, 5),
        "block 0 and run 1 have more than one cell: give their readings as one");
    refused(
        () -> CrossedRunEffect.of(new int[] {0, 0, 1}, new int[] {0, 1, 1}, three(), ones(), 1, 0),
        "withinVariance is 1.0 on 0 degrees of freedom: it must rest on some");
    refused(
        () -> CrossedRunEffect.of(new int[] {0, 0, 1}, new int[] {0, 1, 1}, three(), ones(), 0, 0),
        "withinVariance is 0 and blocks and runs leave no scatter: there is no variance to weigh the"
            + " cells with");
    double[] broken = {1, Double.NaN, 2};
    refused(
        () -> CrossedRunEffect.of(new int[] {0, 0, 1}, new int[] {0, 1, 1}, broken, ones(), 1, 5),
        "mean[1] is NaN: every value must be finite");
    assertThatThrownBy(
            () -> layout(new double[][] {{1, 3, 2}, {2, 1, 5}}, 1, 0, 0).interactionTest())
        .isInstanceOf(IllegalStateException.class)
        .hasMessage(
            "block-by-run scatter has 2 and scatter within cells 0 degrees of freedom: both must"
                + " have some");
  }

  private static double[] three() {
    return new double[] {1, 2, 4};
  }

  private static int[] ones() {
    return new int[] {1, 1, 1};
  }

  private static CrossedRunEffect layout(double[][] y, int n, double variance, int freedom) {
    int runs = y[0].length;
    int cells = y.length * runs;
    int[] block = new int[cells];
    int[] run = new int[cells];
    int[] count = new int[cells];
    double[] mean = new double[cells];
    for (int c = 0; c < cells; c++) {
      block[c] = c / runs;
      run[c] = c % runs;
      count[c] = n;
      mean[c] = y[block[c]][run[c]];
    }
    return CrossedRunEffect.of(block, run, mean, count, variance, freedom);
  }

  private static void refused(Runnable call, String message) {
    assertThatThrownBy(call::run).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }
}
