package fettle.statistics;

import static fettle.statistics.Cases.assertNumber;
import static fettle.statistics.Cases.assertRelative;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.reference.ReferenceCase;
import java.math.BigDecimal;
import java.util.Random;
import org.apache.commons.numbers.core.DD;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Summary statistics, analysis of variance and equivalence against NIST and other publications. */
class SummaryReferenceTest {
  // NIST StRD univariate summary statistics: all printed digits, and 14 of the recomputed value.
  @ParameterizedTest
  @ValueSource(strings = {"lew", "lottery", "mavro", "numacc1", "numacc3", "pidigits"})
  void certifiedSummaries(String name) {
    ReferenceCase file = Cases.load("strd-univariate/" + name + ".json");
    double[] y =
        name.equals("pidigits")
            ? file.at("/data/digits").textValue().chars().mapToDouble(c -> c - '0').toArray()
            : file.column("/data/y");
    SummaryStatistics s = SummaryStatistics.of(y);
    assertEquals(file.number("/expected/observations"), s.size());
    assertNumber(file, "/expected/mean", s.mean(), 1e-15);
    assertNumber(file, "/expected/standard_deviation", s.standardDeviation(), 1e-14);
    assertNumber(file, "/expected/lag1_autocorrelation", s.lag1Autocorrelation(), 1e-14);
  }

  // NIST StRD analysis of variance: all printed digits, and 14 of the recomputed value.
  @ParameterizedTest
  @ValueSource(strings = {"sirstv", "smls01", "smls04"})
  void certifiedAnalysesOfVariance(String name) {
    ReferenceCase file = Cases.load("strd-anova/" + name + ".json");
    OneWayAnova a = OneWayAnova.of(file.columns("/data/groups"));
    assertNumber(file, "/expected/between_df", a.betweenDegreesOfFreedom(), 0);
    assertNumber(file, "/expected/within_df", a.withinDegreesOfFreedom(), 0);
    assertNumber(file, "/expected/between_sum_of_squares", a.betweenSumOfSquares(), 1e-14);
    assertNumber(file, "/expected/between_mean_square", a.betweenMeanSquare(), 1e-14);
    assertNumber(file, "/expected/within_sum_of_squares", a.withinSumOfSquares(), 1e-14);
    assertNumber(file, "/expected/within_mean_square", a.withinMeanSquare(), 1e-14);
    assertNumber(file, "/expected/f_statistic", a.f(), 1e-14);
    assertNumber(file, "/expected/r_squared", a.rSquared(), 1e-14);
    assertNumber(file, "/expected/residual_standard_deviation", a.withinStandardDeviation(), 1e-14);
  }

  // R package qcr, data plates: one-way random effects, recomputed with 60 digits; 1e-13.
  @Test
  void plateUniformity() {
    ReferenceCase file = Cases.load("hardness/vickers-plates.json");
    double[][] plates = file.columns("/data");
    OneWayAnova a = OneWayAnova.of(plates);
    assertNumber(file, "/expected/mean", a.grandMean(), 1e-14);
    assertNumber(file, "/expected/between_ms", a.betweenMeanSquare(), 1e-13);
    assertNumber(file, "/expected/within_ms", a.withinMeanSquare(), 1e-13);
    assertNumber(file, "/expected/F", a.f(), 1e-13);
    assertEquals(file.number("/expected/df/0"), a.betweenDegreesOfFreedom());
    assertEquals(file.number("/expected/df/1"), a.withinDegreesOfFreedom());
    assertNumber(file, "/expected/repeatability_sd", a.withinStandardDeviation(), 1e-13);
    assertNumber(file, "/expected/between_plate_sd", Math.sqrt(a.betweenVariance()), 1e-13);
    double[] nonUniformity = file.column("/expected/relative_non_uniformity_percent_first_5");
    for (int i = 0; i < nonUniformity.length; i++) {
      SummaryStatistics s = SummaryStatistics.of(plates[i]);
      // range over mean; the file prints 8 digits
      assertRelative(nonUniformity[i], 100 * (s.largest() - s.smallest()) / s.mean(), 1e-7);
    }
  }

  // TOSTER 0.8.6, test-known_results: 1e-13 on t and limits, 1e-12 on p.
  @Test
  void equivalenceOfOneSample() {
    ReferenceCase file = Cases.load("diagnostics/tost-toster.json");
    String in = "/settings/one_sample/";
    MeanDifference d =
        MeanDifference.oneSample(
            file.number(in + "mean"),
            file.number(in + "sd"),
            (int) file.number(in + "n"),
            file.number(in + "mu"));
    check(file, "/expected/one_sample/", d, in);
    assertEquals(file.number("/expected/one_sample/df"), d.degreesOfFreedom());
  }

  @Test
  void equivalenceOfTwoSamples() {
    ReferenceCase file = Cases.load("diagnostics/tost-toster.json");
    String in = "/settings/two_sample/";
    MeanDifference d =
        MeanDifference.welch(
            file.number(in + "mean_1"),
            file.number(in + "sd_1"),
            (int) file.number(in + "n_1"),
            file.number(in + "mean_2"),
            file.number(in + "sd_2"),
            (int) file.number(in + "n_2"));
    check(file, "/expected/two_sample_welch/", d, in);
    assertNumber(file, "/expected/two_sample_welch/df_welch", d.degreesOfFreedom(), 1e-13);
  }

  private static void check(ReferenceCase file, String out, MeanDifference d, String in) {
    Equivalence e = new Equivalence(d, file.number(in + "low"), file.number(in + "high"));
    assertNumber(file, out + "t1", e.lowerT(), 1e-13);
    assertNumber(file, out + "p1", e.lowerPValue(), 1e-12);
    assertNumber(file, out + "t2", e.upperT(), 1e-13);
    assertNumber(file, out + "p2", e.upperPValue(), 1e-12);
    assertNumber(file, out + "ci90_low", d.estimate() - d.halfWidth(0.9), 1e-12);
    assertNumber(file, out + "ci90_high", d.estimate() + d.halfWidth(0.9), 1e-12);
    assertNumber(file, out + "ci95_low", d.estimate() - d.halfWidth(0.95), 1e-12);
    assertNumber(file, out + "ci95_high", d.estimate() + d.halfWidth(0.95), 1e-12);
    assertEquals(
        file.at(out + "equivalent").booleanValue(), e.equivalent(file.number("/settings/alpha")));
    assertFalse(e.equivalent(0.9 * e.pValue()));
  }

  // python3 (SciPy 1.17): from scipy import stats; a=[5.1,4.9,5.6,5.3,5.0]; b=[4.8,4.7,5.2,4.9,4.6]
  // stats.ttest_ind(a,b); stats.ttest_ind(a,b,equal_var=False); stats.ttest_rel(a,b)
  @Test
  void comparisonsOfMeans() {
    double[] a = {5.1, 4.9, 5.6, 5.3, 5.0};
    double[] b = {4.8, 4.7, 5.2, 4.9, 4.6};
    MeanDifference pooled = MeanDifference.pooled(SummaryStatistics.of(a), SummaryStatistics.of(b));
    assertRelative(2.108590488016538, pooled.t(0), 1e-12);
    assertRelative(0.06802232880105205, pooled.pValue(0), 1e-12);
    MeanDifference welch = MeanDifference.welch(SummaryStatistics.of(a), SummaryStatistics.of(b));
    assertRelative(2.108590488016538, welch.t(0), 1e-12);
    assertRelative(0.06919334312387594, welch.pValue(0), 1e-12);
    MeanDifference paired = MeanDifference.paired(a, b);
    assertRelative(8.500000000000012, paired.t(0), 1e-12);
    assertRelative(0.001050578070789244, paired.pValue(0), 1e-12);
  }

  // By hand: groups (1, 3), (5, 5), (8, 10), fitted 2.5, 5, 8.5, 2 parameters: lack of fit
  // 2·(0.25 + 0 + 0.25)/1 = 1; within (2 + 0 + 2)/3 = 4/3; F = 0.75 on 1 and 3 degrees of freedom.
  // python3: from scipy import stats; stats.f.sf(.75,1,3)
  @Test
  void lackOfFit() {
    double[][] groups = {{1, 3}, {5, 5}, {8, 10}};
    FTest f = FTest.lackOfFit(groups, new double[] {2.5, 5, 8.5}, 2);
    assertEquals(0.75, f.statistic(), 1e-15);
    assertEquals(1, f.numeratorDegreesOfFreedom());
    assertEquals(3, f.denominatorDegreesOfFreedom());
    assertRelative(0.45018485575210104, f.pValue(), 1e-12);
    PooledVariance s = PooledVariance.of(groups);
    assertEquals(4 / 3.0, s.variance(), 1e-15);
    assertEquals(s, PooledVariance.ofVariances(new double[] {2, 0, 2}, new int[] {2, 2, 2}));
  }

  @Test
  void decimalsAreTakenAsWritten() {
    Random random = new Random(5);
    for (int i = 0; i < 20_000; i++) {
      int places = random.nextInt(9);
      BigDecimal written = BigDecimal.valueOf(random.nextInt(), places);
      DD read = PrintedDecimal.of(written.doubleValue());
      BigDecimal off = read.bigDecimalValue().subtract(written).abs();
      double allowed = Math.abs(written.doubleValue()) * 1e-31;
      assertTrue(off.doubleValue() <= allowed, () -> written + " became " + read);
    }
    // what is no short decimal stays what it is
    assertEquals(0, PrintedDecimal.of(Math.PI * 1e-9).lo());
    assertEquals(1e300, PrintedDecimal.of(1e300).hi());
  }

  @Test
  void equalValuesHaveNoSpread() {
    SummaryStatistics s = SummaryStatistics.of(new double[] {0.1, 0.1, 0.1});
    assertEquals(0, s.standardDeviation());
    assertEquals(0.1, s.mean());
    assertThatThrownBy(s::lag1Autocorrelation)
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("all 3 values are 0.1: they have no autocorrelation");
  }

  @Test
  void refusals() {
    refused(
        () -> SummaryStatistics.of(new double[] {1}),
        "values has 1 values: a standard deviation needs at least 2");
    refused(
        () -> SummaryStatistics.of(new double[] {1, Double.POSITIVE_INFINITY}),
        "values[1] is Infinity: every value must be finite");
    refused(
        () -> OneWayAnova.of(new double[][] {{1, 2}}),
        "groups has 1 groups: an analysis of variance needs at least 2");
    refused(
        () -> OneWayAnova.of(new double[][] {{1}, {2}}),
        "each of the 2 groups has 1 value: an analysis of variance needs a group with at least 2");
    refused(
        () -> OneWayAnova.of(new double[][] {{1, 1}, {1, Double.NaN}}),
        "groups[1][1] is NaN: every value must be finite");
    refused(
        () -> OneWayAnova.of(new double[][] {{4, 4}, {4}}),
        "all 3 values are 4.0: an analysis of variance needs values that differ");
    refused(
        () -> PooledVariance.of(new double[][] {{1}, {2}}),
        "none of the 2 groups has 2 values: they give no variance");
    refused(
        () -> FTest.ofMeanSquares(0, 1, 0, 2),
        "numerator and denominator are both 0: their ratio says nothing");
    refused(
        () -> new Equivalence(new MeanDifference(0, 1, 5), 2, 1),
        "low is 2.0 and high is 1.0: low must be below high");
    refused(
        () -> MeanDifference.welch(1, 0, 3, 2, 0, 3),
        "sd1 and sd2 are both 0: a difference of means needs values that differ");
    refused(
        () -> MeanDifference.paired(new double[] {1, 2}, new double[] {0, 1}),
        "all 2 differences are 1.0: a paired comparison needs values that differ");
  }

  private static void refused(Runnable call, String message) {
    assertThatThrownBy(call::run).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }
}
