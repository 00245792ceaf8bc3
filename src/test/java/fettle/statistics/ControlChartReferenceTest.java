package fettle.statistics;

import static fettle.statistics.Cases.assertNumber;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.reference.ReferenceCase;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Control charts against published cases; each file has its citation. */
class ControlChartReferenceTest {
  // NIST/SEMATECH e-Handbook 6.3.2.3: the sums to 1e-12, signals by observation number from 1.
  @Test
  void cusum() {
    ReferenceCase file = Cases.load("control-charts/ehb-cusum.json");
    double[] x = file.column("/data/x");
    CusumChart chart =
        new CusumChart(
            file.number("/settings/mu"), file.number("/settings/k"), file.number("/settings/h"));
    double[] high = chart.high(x);
    double[] low = chart.low(x);
    for (int i = 0; i < x.length; i++) {
      assertSum(file, "/expected/S_high/" + i, high[i]);
      assertSum(file, "/expected/S_low/" + i, low[i]);
    }
    assertArrayEquals(file.column("/expected/cumulative_sum"), chart.plain(x), 1e-11);
    assertArrayEquals(file.column("/expected/signals_high_at"), fromOne(chart.signals(high)));
    assertArrayEquals(file.column("/expected/signals_low_at"), fromOne(chart.signals(low)));
  }

  /** Sums differ from small multiples of 0.0025 by the rounding of 325. */
  private static void assertSum(ReferenceCase file, String pointer, double actual) {
    ReferenceCase.Expected expected = file.expected(pointer);
    assertEquals(expected.value(), actual, 1e-11, pointer);
    if (expected.printed() != null) {
      assertEquals(
          Double.parseDouble(expected.printed()), actual, expected.halfPrintedUnit() + 1e-11);
    }
  }

  // NIST/SEMATECH e-Handbook 6.3.2.4: 1e-13.
  @Test
  void ewma() {
    ReferenceCase file = Cases.load("control-charts/ehb-ewma.json");
    double[] x = file.column("/data/x");
    double lambda = file.number("/settings/lambda");
    double target = file.number("/settings/target");
    EwmaChart chart =
        new EwmaChart(target, file.number("/settings/s"), lambda, file.number("/settings/L"));
    ControlLimits limits = chart.limits();
    assertNumber(file, "/expected/UCL", limits.upper(), 1e-13);
    assertNumber(file, "/expected/LCL", limits.lower(), 1e-13);
    assertNumber(
        file,
        "/expected/sqrt_lambda_over_2_minus_lambda",
        (limits.upper() - target) / (3 * chart.standardDeviation()),
        1e-12);
    double[] z = chart.averages(x);
    assertNumber(file, "/expected/ewma_from_start_value/0", limits.centre(), 0);
    for (int i = 0; i < z.length; i++) {
      assertNumber(file, "/expected/ewma_from_start_value/" + (i + 1), z[i], 1e-13);
    }
    assertEquals(file.size("/expected/out_of_control_points"), limits.outside(z).length);
    // the first average has the variance λ²σ²
    assertEquals(target + 3 * lambda * 2.0539, chart.limitsAt(1).upper(), 1e-12);
    assertEquals(limits.upper(), chart.limitsAt(200).upper(), 1e-12);
  }

  // NIST/SEMATECH e-Handbook 6.3.2.2, with the rounded d2 1.128 that it uses: 1e-13.
  @Test
  void individuals() {
    ReferenceCase file = Cases.load("control-charts/ehb-individuals.json");
    double[] x = file.column("/data/x");
    IndividualsChart chart = IndividualsChart.of(x, 1.128);
    assertNumber(file, "/expected/mean", chart.mean(), 1e-14);
    assertArrayEquals(
        file.column("/expected/moving_ranges"), IndividualsChart.movingRanges(x), 1e-13);
    assertNumber(file, "/expected/mean_moving_range", chart.meanMovingRange(), 1e-13);
    assertNumber(file, "/expected/UCL", chart.limits().upper(), 1e-13);
    assertNumber(file, "/expected/LCL", chart.limits().lower(), 1e-13);
    assertArrayEquals(
        file.column("/expected/out_of_control_points"), fromOne(chart.limits().outside(x)));
    // D4 of two values, 3.267 in the tables (Montgomery, Appendix VI)
    assertEquals(3.267, chart.movingRangeLimits().upper() / chart.meanMovingRange(), 5e-4);
    assertEquals(SubgroupConstants.of(2).d2(), IndividualsChart.of(x).d2(), 1e-10);
  }

  // NIST/SEMATECH e-Handbook 2.3.7.1, LINEWID.DAT: the file prints 10 digits of each value.
  @Test
  void lineWidthCheckStandards() {
    ReferenceCase file = Cases.load("control-charts/ehb-linewidth-instrument-control.json");
    CheckStandardControl control =
        new CheckStandardControl(
            file.number("/settings/a"),
            file.number("/settings/b"),
            file.number("/settings/s"),
            file.number("/settings/degrees_of_freedom"),
            (int) file.number("/settings/check_standards"),
            file.number("/settings/alpha"));
    assertNumber(file, "/expected/zeta", control.zeta(), 1e-13);
    assertNumber(file, "/expected/t_critical", control.criticalT(), 1e-9);
    assertNumber(file, "/expected/upper_control_limit", control.limits().upper(), 1e-9);
    assertNumber(file, "/expected/lower_control_limit", control.limits().lower(), 1e-9);
    double[] x = file.column("/data/x");
    double[] y = file.column("/data/y");
    double[] w = new double[x.length];
    for (int i = 0; i < w.length; i++) {
      w[i] = control.deviation(x[i], y[i]);
    }
    assertArrayEquals(file.column("/expected/control_statistic"), w, 1e-10);
    assertArrayEquals(
        file.column("/expected/out_of_control_rows"), fromOne(control.limits().outside(w)));
  }

  // Montgomery 1991, pp. 206-213, with the table's factors: 1e-13 on the limits.
  @Test
  void pistonRings() {
    ReferenceCase file = Cases.load("control-charts/montgomery-piston-rings.json");
    double[][] samples = file.columns("/data");
    int first = (int) file.number("/settings/phase_1_samples");
    ControlFactors printed =
        new ControlFactors(
            file.number("/settings/A2"),
            0,
            file.number("/settings/D4"),
            file.number("/settings/A3"),
            0,
            file.number("/settings/B4"));
    double[][] preliminary = Arrays.copyOf(samples, first);
    SubgroupChart chart = SubgroupChart.of(preliminary, printed);
    assertNumber(file, "/expected/grand_mean", chart.meanLimitsByRange().centre(), 1e-14);
    assertNumber(file, "/expected/mean_range", chart.rangeLimits().centre(), 1e-11);
    assertNumber(file, "/expected/mean_sd", chart.scatterLimits().centre(), 1e-13);
    assertNumber(file, "/expected/xbar_chart_from_R/UCL", chart.meanLimitsByRange().upper(), 1e-13);
    assertNumber(file, "/expected/xbar_chart_from_R/LCL", chart.meanLimitsByRange().lower(), 1e-13);
    assertNumber(
        file, "/expected/xbar_chart_from_S/UCL", chart.meanLimitsByScatter().upper(), 1e-13);
    assertNumber(
        file, "/expected/xbar_chart_from_S/LCL", chart.meanLimitsByScatter().lower(), 1e-13);
    assertNumber(file, "/expected/R_chart/UCL", chart.rangeLimits().upper(), 1e-11);
    assertNumber(file, "/expected/R_chart/LCL", chart.rangeLimits().lower(), 0);
    assertNumber(file, "/expected/S_chart/UCL", chart.scatterLimits().upper(), 1e-13);
    assertNumber(file, "/expected/S_chart/LCL", chart.scatterLimits().lower(), 0);
    assertArrayEquals(
        file.column("/expected/phase_1_out_of_limits"),
        fromOne(chart.meanLimitsByRange().outside(chart.means())));
    assertEquals(0, chart.rangeLimits().outside(chart.ranges()).length);
    assertEquals(0, chart.scatterLimits().outside(chart.standardDeviations()).length);
    double[] all = SubgroupChart.of(samples, printed).means();
    assertArrayEquals(
        file.column("/expected/phase_2_xbar_out_of_limits"),
        fromOne(chart.meanLimitsByRange().outside(all)));

    // the computed factors are those of the table (Montgomery, Appendix VI, three decimals)
    SubgroupConstants five = SubgroupConstants.of(5);
    assertNumber(file, "/expected/exact_constants_n5/d2", five.d2(), 1e-9);
    assertNumber(file, "/expected/exact_constants_n5/c4", five.c4(), 1e-12);
    ControlFactors factors = five.factors();
    assertEquals(printed.meanFromRange(), factors.meanFromRange(), 5e-4);
    assertEquals(printed.rangeUpper(), factors.rangeUpper(), 6e-4);
    assertEquals(printed.meanFromScatter(), factors.meanFromScatter(), 5e-4);
    assertEquals(printed.scatterUpper(), factors.scatterUpper(), 5e-4);
    assertEquals(0, factors.rangeLower());
    assertEquals(0, factors.scatterLower());
    assertEquals(
        chart.meanLimitsByRange().upper(),
        SubgroupChart.of(preliminary).meanLimitsByRange().upper(),
        2e-5);
  }

  // R package qcr, data plates; recomputed with 60 digits: 1e-12.
  @Test
  void hardnessOfPlates() {
    ReferenceCase file = Cases.load("hardness/vickers-plates.json");
    SubgroupChart chart =
        SubgroupChart.of(
            file.columns("/data"), new ControlFactors(0.577, 0, 2.114, 1.427, 0, 2.089));
    assertNumber(file, "/expected/mean_range", chart.rangeLimits().centre(), 1e-12);
    ControlLimits limits = chart.meanLimitsByRange();
    assertNumber(file, "/expected/xbar_limits_A2_0.577/UCL", limits.upper(), 1e-13);
    assertNumber(file, "/expected/xbar_limits_A2_0.577/LCL", limits.lower(), 1e-13);
    assertArrayEquals(
        file.column("/expected/plates_outside_limits"), fromOne(limits.outside(chart.means())));
  }

  private static double[] fromOne(int[] indices) {
    return IntStream.of(indices).mapToDouble(i -> i + 1).toArray();
  }
}
