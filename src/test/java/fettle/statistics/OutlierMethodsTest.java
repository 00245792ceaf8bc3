package fettle.statistics;

import static fettle.statistics.Cases.assertRelative;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Outlier tests where no reference case covers them, their properties, and their refusals. */
class OutlierMethodsTest {
  private static final double[] EIGHT = {
    199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57
  };

  // Simulation with NumPy 2.4 (default_rng(1), x.var of sorted normal samples, 2e6 samples for
  // n = 4, 5, 8, 1e6 for 12 and 20): quantiles 0.005, 0.025, 0.05, 0.3 of the ratio for the two
  // largest. Tolerance: p within 4.5 standard deviations of the simulated quantile's level.
  @Test
  void pairDistributionAgreesWithSimulation() {
    int[] n = {4, 5, 8, 12, 20};
    double[] samples = {2e6, 2e6, 2e6, 1e6, 1e6};
    double[] levels = {0.005, 0.025, 0.05, 0.3};
    double[][] quantiles = {
      {7.48709076369601e-06, 0.00018740043590166562, 0.0007577044397688231, 0.030091372493469628},
      {0.0017605770055925125, 0.00899309121309999, 0.018329458159451972, 0.12254939875543916},
      {0.056694374551481776, 0.11067406201068207, 0.14815847305206878, 0.3277021228836891},
      {0.17335017805622688, 0.25308096079041126, 0.299043749381538, 0.47292829854880786},
      {0.3586921205119844, 0.43886683042591595, 0.4803517264506186, 0.6173560628536179}
    };
    for (int i = 0; i < n.length; i++) {
      GrubbsPair pair = GrubbsPair.forSize(n[i]);
      for (int k = 0; k < levels.length; k++) {
        double sd = Math.sqrt(levels[k] * (1 - levels[k]) / samples[i]);
        assertEquals(levels[k], pair.pValue(quantiles[i][k]), 4.5 * sd, n[i] + " " + levels[k]);
      }
    }
  }

  // The residuals of four normal values are uniform on a sphere in three dimensions: a direct sum
  // over it, which uses neither the recursion nor the quadrature.
  @Test
  void pairOfFourAgreesWithADirectSum() {
    int steps = 2000;
    double below = 0;
    double c = 0.01;
    double e = Math.sqrt(0.5);
    for (int i = 0; i < steps; i++) {
      double z = -1 + (i + 0.5) * 2 / steps;
      double r = Math.sqrt(1 - z * z);
      for (int k = 0; k < 2 * steps; k++) {
        double phi = (k + 0.5) * Math.PI / steps;
        double a = z;
        double b = r * Math.cos(phi);
        double d = r * Math.sin(phi);
        // contrasts (1,-1,0,0)/√2, (0,0,1,-1)/√2, (1,1,-1,-1)/2
        double[] x = {a * e + d / 2, -a * e + d / 2, b * e - d / 2, -b * e - d / 2};
        if (GrubbsPair.ratio(x, Tail.UPPER) <= c) {
          below++;
        }
      }
    }
    double share = below / (2.0 * steps * steps);
    // the edge of the region cuts of the order of 2·steps of 8e6 cells; half of them: 2.5e-4
    assertEquals(share, GrubbsPair.forSize(4).pValue(c), 2.5e-4);
  }

  // ISO 5725-2:1994 Table 5, double outlier columns, 1 % and 5 %, from memory:
  // half the last digit, and 1e-5 for the entry 0.1864 (computed 0.186452).
  @Test
  void pairCriticalValuesOfTheStandard() {
    int[] n = {4, 5, 6, 7, 8, 9, 10};
    double[] one = {0.0000, 0.0018, 0.0116, 0.0308, 0.0563, 0.0851, 0.1150};
    double[] five = {0.0002, 0.0090, 0.0349, 0.0708, 0.1101, 0.1492, 0.1864};
    for (int i = 0; i < n.length; i++) {
      GrubbsPair pair = GrubbsPair.forSize(n[i]);
      assertEquals(one[i], pair.criticalValue(0.005), 6e-5, "1 %, n = " + n[i]);
      assertEquals(five[i], pair.criticalValue(0.025), 6e-5, "5 %, n = " + n[i]);
    }
  }

  @Test
  void pairCriticalValueInvertsTheProbability() {
    for (int n : new int[] {4, 5, 6, 10, 30, 100}) {
      GrubbsPair pair = GrubbsPair.forSize(n);
      for (double alpha : new double[] {0.001, 0.05, 0.5}) {
        assertRelative(alpha, pair.pValue(pair.criticalValue(alpha)), 1e-6);
      }
    }
  }

  @Test
  void pairIsBlindToOrderShiftAndUnit() {
    double[] x = {5, 1, 2, 9, 8.5, 3, 2.5};
    double[] y = {-3.5 * 9 + 4, -3.5 * 5 + 4, -3.5, -3.5 * 2.5 + 4, -3.5 * 8.5 + 4, 0.5, 0};
    y[2] = -3.5 * 1 + 4;
    y[5] = -3.5 * 2 + 4;
    y[6] = -3.5 * 3 + 4;
    assertRelative(GrubbsPair.ratio(x, Tail.UPPER), GrubbsPair.ratio(y, Tail.LOWER), 1e-13);
    assertEquals(
        Math.min(GrubbsPair.ratio(x, Tail.UPPER), GrubbsPair.ratio(x, Tail.LOWER)),
        GrubbsPair.ratio(x, Tail.EITHER));
  }

  @Test
  void grubbsPValueMeetsTheLevelAtTheCriticalValue() {
    // a sample built to have exactly the critical G: residual of one value, the others on a line
    double g = GrubbsSingle.criticalValue(8, 0.01, Tail.EITHER);
    double[] x = {-3, -2, -1, 0, 1, 2, 3, 0};
    double low = 3;
    double high = 1e3;
    for (int i = 0; i < 200; i++) {
      x[7] = 0.5 * (low + high);
      if (GrubbsSingle.test(x, Tail.EITHER).statistic() < g) {
        low = x[7];
      } else {
        high = x[7];
      }
    }
    assertRelative(0.01, GrubbsSingle.test(x, Tail.EITHER).pValue(), 1e-9);
    assertRelative(0.005, GrubbsSingle.test(x, Tail.UPPER).pValue(), 1e-9);
  }

  @Test
  void grubbsKeepsItsLevelOnNormalValues() {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(11);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(random);
    double critical = GrubbsSingle.criticalValue(6, 0.05, Tail.EITHER);
    int trials = 40_000;
    int above = 0;
    double[] x = new double[6];
    for (int i = 0; i < trials; i++) {
      for (int k = 0; k < 6; k++) {
        x[k] = normal.sample();
      }
      if (GrubbsSingle.test(x, Tail.EITHER).statistic() > critical) {
        above++;
      }
    }
    // four standard deviations of a binomial share
    assertEquals(0.05, above / (double) trials, 4 * Math.sqrt(0.05 * 0.95 / trials));
  }

  // python3: from scipy import stats; v=[1.1,.9,4.2,1.3,.7]; C=4.2/8.2;
  // 5*stats.f.sf(4*C/(1-C),5,20)  (all n = 6)
  @Test
  void cochranPValue() {
    double[] variances = {1.1, 0.9, 4.2, 1.3, 0.7};
    int[] counts = {6, 6, 6, 6, 6};
    CochranVariance result = CochranVariance.test(variances, counts);
    assertEquals(2, result.index());
    assertEquals(4.2 / 8.2, result.statistic(), 1e-15);
    assertTrue(result.balanced());
    assertRelative(0.04501405707705106, result.pValue(), 1e-12);
  }

  // python3: from scipy import stats; v=[1.1,.9,4.2,1.3,.7]; n=[9,9,3,9,9];
  // t=sum((a-1)*b for a,b in zip(n,v)); 5*stats.beta.sf(2*4.2/t,1,16)
  @Test
  void cochranWeighsUnequalCells() {
    CochranVariance result =
        CochranVariance.test(new double[] {1.1, 0.9, 4.2, 1.3, 0.7}, new int[] {9, 9, 3, 9, 9});
    assertFalse(result.balanced());
    assertEquals(2, result.index());
    assertRelative(0.12002392245893745, result.pValue(), 1e-12);
  }

  @Test
  void modifiedZScores() {
    // by hand: median 3, deviations 2 1 0 1 97, MAD 1 (formula: Iglewicz and Hoaglin 1993)
    double[] z = ModifiedZScores.of(new double[] {1, 2, 3, 4, 100});
    assertArrayEquals(new double[] {-1.349, -0.6745, 0, 0.6745, 65.4265}, z, 1e-12);
  }

  @Test
  void dixonRatioOfEitherEnd() {
    double[] x = {1, 5, 4, 4.5, 9};
    assertEquals(0.5, DixonRatio.r10(x, Tail.UPPER), 1e-15);
    assertEquals(0.375, DixonRatio.r10(x, Tail.LOWER), 1e-15);
    assertEquals(0.5, DixonRatio.r10(x, Tail.EITHER), 1e-15);
    assertRelative(0.05, DixonRatio.pValue(DixonRatio.criticalValue(12, 0.05), 12), 1e-9);
    // three values: the middle one is as likely in either half of the range
    assertEquals(0.5, DixonRatio.pValue(0.5, 3), 1e-10);
  }

  @Test
  void manyCellsAreScreenedQuickly() {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(3);
    long start = System.nanoTime();
    int flagged = 0;
    double[] cell = new double[10];
    for (int i = 0; i < 20_000; i++) {
      for (int k = 0; k < cell.length; k++) {
        cell[k] = random.nextDouble();
      }
      if (GrubbsSingle.test(cell, Tail.EITHER).pValue() < 0.01) {
        flagged++;
      }
    }
    assertTrue(flagged < 200);
    // takes well under a second; ten leave room for a busy machine
    assertTrue(System.nanoTime() - start < 10_000_000_000L);
  }

  @Test
  void refusals() {
    refused(
        () -> GrubbsSingle.test(new double[] {1, 2}, Tail.EITHER),
        "values has 2 values: Grubbs' test for one value needs at least 3");
    refused(
        () -> GrubbsSingle.test(new double[] {1, Double.NaN, 3}, Tail.EITHER),
        "values[1] is NaN: every value must be finite");
    refused(
        () -> GrubbsSingle.test(new double[] {7, 7, 7, 7}, Tail.EITHER),
        "all 4 values are 7.0: Grubbs' test for one value needs values that differ");
    refused(
        () -> GrubbsSingle.criticalValue(5, 1, Tail.UPPER),
        "alpha is 1.0: it must lie strictly between 0 and 1");
    refused(
        () -> GrubbsPair.ratio(new double[] {1, 2, 3}, Tail.UPPER),
        "values has 3 values: Grubbs' test for two values needs at least 4");
    refused(() -> GrubbsPair.forSize(3), "n is 3: it must be at least 4");
    refused(() -> GrubbsPair.forSize(5).pValue(1.5), "ratio is 1.5: it must lie between 0 and 1");
    refused(
        () -> GeneralizedEsd.test(EIGHT, 7, 0.05),
        "values has 8 values: the generalized ESD test for 7 outliers needs at least 9");
    refused(
        () -> CochranVariance.test(new double[] {1, 2}, new int[] {3}),
        "variances has 2 values and counts has 1: they must have the same length");
    refused(
        () -> CochranVariance.test(new double[] {0, 0, 0}, new int[] {3, 3, 3}),
        "all 3 variances are 0.0: Cochran's test needs values that differ");
    refused(
        () -> CochranVariance.test(new double[] {1, -1}, new int[] {3, 3}),
        "variances[1] is -1.0: it must be finite and not negative");
    refused(
        () -> ModifiedZScores.of(new double[] {2, 2, 2, 9}),
        "half or more of the 4 values are 2.0: their median absolute deviation is 0 and gives no"
            + " scale");
    refused(
        () -> DixonRatio.r10(new double[] {2, 2, 2}, Tail.UPPER),
        "all 3 values are 2.0: Dixon's ratio needs values that differ");
  }

  private static void refused(Runnable call, String message) {
    assertThatThrownBy(call::run).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }
}
