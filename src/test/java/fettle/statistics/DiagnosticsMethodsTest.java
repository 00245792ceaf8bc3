package fettle.statistics;

import static fettle.statistics.Cases.assertRelative;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Diagnostics where no reference case covers them, their properties, and their refusals. */
class DiagnosticsMethodsTest {
  private static final double[] X = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12};
  private static final double[] Y = {2.1, 1.7, 2.9, 3.3, 2.6, 4.4, 3.9, 4.1, 5.2, 4.3, 5.9, 5.1};

  // Two terms have a closed form: P(a z1² − b z2² below 0) = (2/π) atan √(b/a).
  @Test
  void quadraticFormOfTwoTerms() {
    for (double b : new double[] {1e-6, 0.01, 0.5, 1, 3, 1e4}) {
      double expected = 2 / Math.PI * Math.atan(Math.sqrt(b));
      assertRelative(
          expected, NormalQuadraticForm.negativeProbability(new double[] {1, -b}), 1e-12);
    }
  }

  // Equal terms of each sign make an F ratio: P(Σ_m z² below c Σ_k z²) = F(c k/m; m, k).
  // python3 (SciPy 1.17): from scipy import stats; stats.f.cdf(.1*30/20,20,30) etc.
  @Test
  void quadraticFormOfManyEqualTerms() {
    checkForm(20, 30, 0.1, 2.2748009005505647e-05);
    checkForm(20, 30, 1.0, 0.8462718725204468);
    checkForm(3, 4, 5.0, 0.9509072178909133);
    checkForm(1, 1, 0.3, 0.3190057200399771);
    checkForm(100, 80, 1.2, 0.4207761943466027);
    checkForm(5, 50, 0.002, 0.0001740063100849885);
  }

  private static void checkForm(int m, int k, double c, double expected) {
    double[] mu = new double[m + k];
    for (int i = 0; i < m + k; i++) {
      mu[i] = i < m ? 1 : -c;
    }
    assertRelative(expected, NormalQuadraticForm.negativeProbability(mu), 1e-11);
  }

  // python3 (SciPy 1.17): stats.shapiro(v) for v = np.arange(1, n+1)**1.5, n = 3, 4, 5, 6, 11, 12,
  // 50, 500
  @Test
  void shapiroWilkAtEveryBranch() {
    checkShapiro(3, 0.994524176036779, 0.8585433827622149);
    checkShapiro(4, 0.9835831219585798, 0.922696094240749);
    checkShapiro(5, 0.9747351754028045, 0.9046818121535705);
    checkShapiro(6, 0.967902237310067, 0.8780581722245697);
    checkShapiro(11, 0.9494908107110819, 0.6374530257045872);
    checkShapiro(12, 0.9474755116990481, 0.6004210353435779);
    checkShapiro(50, 0.9317869896440616, 0.006461088351257112);
    checkShapiro(500, 0.9297131758150774, 1.4399236979423045e-14);
  }

  private static void checkShapiro(int n, double w, double p) {
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      v[i] = Math.pow(i + 1, 1.5);
    }
    ShapiroWilk test = ShapiroWilk.test(v);
    assertEquals(w, test.statistic(), 1e-9, "W, n = " + n);
    assertEquals(p, test.pValue(), 1e-7, "p, n = " + n);
  }

  @Test
  void shapiroWilkKeepsItsLevel() {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(17);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(random);
    int trials = 20_000;
    int below = 0;
    double[] v = new double[15];
    for (int i = 0; i < trials; i++) {
      for (int k = 0; k < v.length; k++) {
        v[k] = normal.sample();
      }
      if (ShapiroWilk.test(v).pValue() < 0.05) {
        below++;
      }
    }
    // four standard deviations, and 0.003 for Royston's approximation
    assertEquals(0.05, below / (double) trials, 4 * Math.sqrt(0.05 * 0.95 / trials) + 0.003);
  }

  // python3 (SciPy 1.17): stats.linregress(x, y): slope, stderr, pvalue
  @Test
  void trend() {
    SlopeTrend trend = SlopeTrend.of(X, Y);
    assertRelative(0.329020979020979, trend.slope(), 1e-13);
    assertRelative(0.04647527054078205, trend.standardError(), 1e-12);
    assertRelative(3.377197773716174e-05, trend.pValue(), 1e-11);
    assertRelative(trend.slope(), SlopeTrend.inOrder(Y).slope(), 1e-13);
    LinearRegression line = LinearRegression.line(X, Y);
    assertRelative(trend.slope(), line.coefficients()[1], 1e-13);
    assertRelative(trend.standardError(), line.standardErrors()[1], 1e-12);
    // the interval touches 0 at the confidence 1 - p
    assertRelative(trend.slope(), trend.halfWidth(1 - trend.pValue()), 1e-9);
  }

  // python3 (SciPy 1.17): stats.spearmanr(x, y) for 12 pairs; for 5 pairs all 120 orders counted:
  // from itertools import permutations; a=[1,2,3,4,5]; b=[2,1,4,3,5]; rho 0.8;
  // sum(abs(stats.spearmanr(a,q)[0])>=.8-1e-12 for q in permutations(b))/120 -> 16/120
  @Test
  void rankCorrelation() {
    SpearmanCorrelation large = SpearmanCorrelation.of(X, Y);
    assertRelative(0.8881118881118882, large.rho(), 1e-13);
    assertRelative(0.00011413359814618021, large.pValue(), 1e-11);
    SpearmanCorrelation small =
        SpearmanCorrelation.of(new double[] {1, 2, 3, 4, 5}, new double[] {20, 10, 40, 30, 50});
    assertEquals(0.8, small.rho(), 1e-15);
    assertEquals(16 / 120.0, small.pValue(), 1e-15);
    // ties share ranks: ranks 1.5 1.5 3 against 1 2 3
    assertEquals(
        Math.sqrt(0.75),
        SpearmanCorrelation.of(new double[] {4, 4, 9}, new double[] {1, 2, 3}).rho(),
        1e-15);
    assertEquals(-1, SpearmanCorrelation.of(X, negated(X)).rho());
  }

  // Counted by hand for 3 and 4 signs, 35 orders. python3:
  // from itertools import permutations, groupby; from collections import Counter
  // Counter(len(list(groupby(q))) for q in set(permutations('aaabbbb'))) -> 2: 2, 3: 5, 4: 12, 5:
  // 9, 6: 6, 7: 1
  @Test
  void runsByCounting() {
    RunsTest few = RunsTest.of(3, 4, 3);
    assertEquals(7 / 35.0, few.fewPValue(), 1e-13);
    assertEquals(33 / 35.0, few.manyPValue(), 1e-13);
    RunsTest signs = RunsTest.ofSigns(new double[] {-1, -2, 0, 3, 1, 2, 5, -4});
    assertEquals(3, signs.negative());
    assertEquals(4, signs.positive());
    assertEquals(3, signs.runs());
    assertEquals(few.pValue(), signs.pValue(), 1e-15);
    RunsTest trend = RunsTest.aboutMedian(X);
    assertEquals(2, trend.runs());
    // two of the 924 orders of six and six
    assertEquals(2 / 924.0, trend.fewPValue(), 1e-14);
    // all probabilities together
    assertEquals(1, RunsTest.of(200, 300, 401).fewPValue(), 1e-11);
  }

  // python3 (SciPy 1.17): stats.bartlett, stats.levene(center='median') on three unequal groups
  @Test
  void variancesOfUnequalGroups() {
    double[][] groups = {{1, 2, 4, 8}, {3, 3.5, 4.1, 2.2, 2.9}, {10, 11, 9}};
    BartlettTest bartlett = BartlettTest.of(groups);
    assertRelative(6.53764581186726, bartlett.statistic(), 1e-12);
    assertRelative(0.0380511905552133, bartlett.pValue(), 1e-11);
    FTest levene = LeveneTest.aboutMedians(groups);
    assertRelative(2.8025726310073313, levene.statistic(), 1e-12);
    assertRelative(0.11319176420256805, levene.pValue(), 1e-11);
  }

  @Test
  void durbinWatsonOfReversedOrderIsTheSame() {
    DurbinWatson there = DurbinWatson.of(LinearRegression.line(X, Y));
    double[] x = new double[X.length];
    double[] y = new double[X.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = X[x.length - 1 - i];
      y[i] = Y[x.length - 1 - i];
    }
    DurbinWatson back = DurbinWatson.of(LinearRegression.line(x, y));
    assertRelative(there.statistic(), back.statistic(), 1e-12);
    assertRelative(there.positivePValue(), back.positivePValue(), 1e-10);
    // an exact p below the level where d lies below the lower bound, and above it above the upper
    DurbinWatsonBounds bounds = DurbinWatsonBounds.of(12, 1, there.positivePValue());
    assertTrue(bounds.lower() <= there.statistic() && there.statistic() <= bounds.upper());
  }

  @Test
  void refusals() {
    refused(
        () -> LinearRegression.of(new double[][] {{1, 2}, {1, 2}, {1, 2}}, new double[] {1, 2, 3}),
        "column 1 of the design is a combination of those before it");
    refused(
        () -> LinearRegression.line(new double[] {1, 2}, new double[] {1, 2}),
        "response has 2 values: a regression on 2 columns needs at least 3");
    refused(
        () -> LinearRegression.of(new double[][] {{1}, {Double.NaN}}, new double[] {1, 2}),
        "design[1][0] is NaN: every value must be finite");
    refused(
        () ->
            RegressionInfluence.of(
                LinearRegression.line(new double[] {1, 2, 3}, new double[] {1, 2, 4})),
        "the regression has 1 degrees of freedom: influence needs at least 2");
    refused(
        () ->
            RegressionInfluence.of(
                LinearRegression.line(new double[] {0, 0, 0, 0, 5}, new double[] {1, 2, 4, 3, 9})),
        "observation 4 has leverage 1: it alone determines a coefficient");
    refused(
        () -> ShapiroWilk.test(new double[] {3, 3, 3}),
        "all 3 values are 3.0: the Shapiro–Wilk test needs values that differ");
    refused(
        () -> ShapiroWilk.test(new double[5001]),
        "values has 5001 values: the Shapiro–Wilk test takes at most 5000");
    refused(
        () -> RunsTest.ofSigns(new double[] {1, 2, 3}),
        "3 values lie above 0.0 and 0 below: a runs test needs both");
    refused(() -> RunsTest.of(2, 3, 6), "runs is 6: 2 and 3 signs make 2 to 5 runs");
    refused(
        () -> LeveneTest.aboutMedians(new double[][] {{1, 2}, {3, 4}}),
        "groups[0] has 2 values: Levene's test needs at least 3");
    refused(
        () -> BartlettTest.of(new double[][] {{1, 2}, {3, 3}}),
        "all 2 values of groups[1] are 3.0: Bartlett's test needs values that differ");
    refused(
        () -> SlopeTrend.of(new double[] {1, 1, 1}, new double[] {1, 2, 3}),
        "all 3 x are 1.0: a trend needs values that differ");
    refused(
        () -> SpearmanCorrelation.of(new double[] {1, 2, 3}, new double[] {5, 5, 5}),
        "all 3 y are 5.0: a rank correlation needs values that differ");
    refused(
        () -> DurbinWatson.statistic(new double[] {0, 0, 0}),
        "all 3 residuals are 0.0: the Durbin–Watson statistic needs values that differ");
    refused(
        () -> BreuschPagan.of(new double[] {1, -1, 1}, new double[][] {{1}, {2}, {3}}),
        "all 3 squared residuals are 1.0: the Breusch–Pagan test needs values that differ");
    refused(
        () -> IsotonicRegression.fit(new double[] {1, 2}, new double[] {1, 0}),
        "weights[1] is 0.0: it must be finite and above zero");
  }

  private static double[] negated(double[] x) {
    return Arrays.stream(x).map(v -> -v).toArray();
  }

  private static void refused(Runnable call, String message) {
    assertThatThrownBy(call::run).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }
}
