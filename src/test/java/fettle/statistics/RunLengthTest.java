package fettle.statistics;

import static fettle.statistics.Cases.assertRelative;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Average run lengths and chart constants, and the refusals of the charts. */
class RunLengthTest {
  // J. M. Lucas, M. S. Saccucci, Technometrics 32 (1990) 1, Table 3, and D. C. Montgomery,
  // Introduction
  // to Statistical Quality Control, Tables 9.3 and 9.11 (from memory). Tolerance: half the last
  // printed digit, and 0.05 for the two-decimal EWMA entries, whose method was coarser.
  @Test
  void publishedRunLengths() {
    assertEquals(370.4, AverageRunLength.shewhart(3, 0), 0.05);
    assertEquals(43.89, AverageRunLength.shewhart(3, 1), 0.01);
    assertEquals(6.30, AverageRunLength.shewhart(3, 2), 0.005);
    assertEquals(2.00, AverageRunLength.shewhart(3, 3), 0.005);
    assertEquals(500, AverageRunLength.ewma(0.2, 2.962, 0), 0.5);
    assertEquals(10.5, AverageRunLength.ewma(0.2, 2.962, 1), 0.05);
    assertEquals(3.70, AverageRunLength.ewma(0.2, 2.962, 2), 0.05);
    assertEquals(500, AverageRunLength.ewma(0.1, 2.814, 0), 1);
    assertEquals(10.3, AverageRunLength.ewma(0.1, 2.814, 1), 0.05);
    double[] four = {168, 74.2, 26.6, 13.3, 8.38, 4.75, 3.34, 2.62, 2.19, 1.71};
    double[] five = {465, 139, 38.0, 17.0, 10.4, 5.75, 4.01, 3.11, 2.57, 2.01};
    double[] shift = {0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 4};
    for (int i = 0; i < shift.length; i++) {
      double unit4 = i == 0 ? 0.5 : i < 4 ? 0.05 : 0.005;
      double unit5 = i < 2 ? 0.5 : i < 5 ? 0.05 : 0.005;
      assertEquals(four[i], AverageRunLength.cusum(0.5, 4, shift[i]), 1.1 * unit4);
      assertEquals(five[i], AverageRunLength.cusum(0.5, 5, shift[i]), 1.1 * unit5);
    }
    assertEquals(930.9, AverageRunLength.cusumOneSided(0.5, 5, 0), 0.1);
  }

  // The schemes used for check blocks, by Gauss–Legendre solution of the integral equation (Crowder
  // 1987) in NumPy 2.4: L(z) = 1 + ∫ φ((y - (1-λ)z)/λ - δ)/λ L(y) dy with 200 points; for the cusum
  // L(s) = 1 + Φ(k - s - δ) L(0) + ∫_0^h φ(y + k - s - δ) L(y) dy with 100 points. 1e-4.
  @Test
  void integralEquationAgrees() {
    double[][] ewma = {
      {0.2, 2.86, 371.10330425095185, 9.801524514742333, 3.5927668060136266, 2.308625550423796},
      {0.1, 2.7, 368.9937339813286, 9.730011622255455, 4.178587579272458, 2.7592535181289692},
      {0.2, 2.962, 499.7351221672468, 10.541665796564558, 3.743439060539453, 2.380903484080398},
      {0.05, 2.5, 379.09090627722935, 10.785962468906972, 4.997834043836728, 3.359063852422381},
      {0.5, 3, 397.4608178475807, 15.73778068289154, 3.4684991586143608, 1.8697157920404774}
    };
    for (double[] row : ewma) {
      for (int d = 0; d < 4; d++) {
        assertRelative(row[d + 2], AverageRunLength.ewma(row[0], row[1], d), 1e-4);
      }
    }
    double[][] cusum = {
      {0.5, 4.77, 368.5613944699702, 9.917042464132214, 3.855294087278615, 2.4844440816194973},
      {0.5, 5, 465.4435060320002, 10.375969921593589, 4.008871061031074, 2.5732520514474095},
      {0.5, 4, 167.68378881360752, 8.383131870495138, 3.3427701294298497, 2.194480908611609},
      {0.25, 8, 368.3938732649178, 11.393208205814524, 5.214160696601524, 3.4755550745809916}
    };
    for (double[] row : cusum) {
      for (int d = 0; d < 4; d++) {
        assertRelative(row[d + 2], AverageRunLength.cusum(row[0], row[1], d), 1e-4);
      }
    }
  }

  @Test
  void chartsGiveTheirOwnRunLengths() {
    assertRelative(
        AverageRunLength.ewma(0.2, 2.86, 1),
        new EwmaChart(50, 4, 0.2, 2.86).averageRunLength(4),
        0);
    assertRelative(
        AverageRunLength.cusum(0.5, 5, -1),
        new CusumChart(7, 1, 10).averageRunLength(-2, 2),
        1e-12);
    // an average of the newest value alone is a Shewhart chart
    assertRelative(AverageRunLength.shewhart(3, 0.7), AverageRunLength.ewma(1, 3, 0.7), 1e-9);
  }

  // Harter 1960 and the usual tables of chart constants (Montgomery, Appendix VI): d2, d3, c4 to
  // the
  // printed digits.
  @Test
  void subgroupConstants() {
    double[][] table = {
      {2, 1.128, 0.853, 0.7979},
      {3, 1.693, 0.888, 0.8862},
      {4, 2.059, 0.880, 0.9213},
      {5, 2.326, 0.864, 0.9400},
      {8, 2.847, 0.820, 0.9650},
      {10, 3.078, 0.797, 0.9727},
      {25, 3.931, 0.708, 0.9896}
    };
    for (double[] row : table) {
      SubgroupConstants c = SubgroupConstants.of((int) row[0]);
      assertEquals(row[1], c.d2(), 5.1e-4);
      assertEquals(row[2], c.d3(), 5.1e-4);
      assertEquals(row[3], c.c4(), 5.1e-5);
    }
    // closed forms: d2 = 2/√π, d3² = 2 - 4/π for two; d2 = 3/√π for three
    assertEquals(2 / Math.sqrt(Math.PI), SubgroupConstants.of(2).d2(), 1e-11);
    assertEquals(Math.sqrt(2 - 4 / Math.PI), SubgroupConstants.of(2).d3(), 1e-10);
    assertEquals(3 / Math.sqrt(Math.PI), SubgroupConstants.of(3).d2(), 1e-11);
    // D3 of seven values is the first above 0: 0.076
    assertEquals(0.076, SubgroupConstants.of(7).factors().rangeLower(), 5e-4);
    assertEquals(0, SubgroupConstants.of(6).factors().rangeLower());
  }

  @Test
  void limitsAndSides() {
    assertArrayEquals(
        new int[] {0, 3}, new ControlLimits(1, 2, 3).outside(new double[] {0.5, 1, 3, 3.1}));
    CusumChart chart = new CusumChart(0, 0.5, 2);
    double[] x = {1, 2, -3, 1, 0};
    double[] mirrored = {-1, -2, 3, -1, 0};
    assertArrayEquals(chart.high(x), chart.low(mirrored));
    assertArrayEquals(new double[] {0.5, 2, 0, 0.5, 0}, chart.high(x));
    // on the decision interval is not yet a signal
    assertEquals(0, chart.signals(chart.high(x)).length);
  }

  @Test
  void refusals() {
    refused(() -> new EwmaChart(0, 1, 0, 3), "lambda is 0.0: it must be above 0 and at most 1");
    refused(
        () -> new EwmaChart(0, 0, 0.2, 3),
        "standardDeviation is 0.0: it must be finite and above zero");
    refused(
        () -> new CusumChart(0, -1, 3), "allowance is -1.0: it must be finite and not negative");
    refused(
        () -> new CusumChart(0, 1, 3).high(new double[] {1, Double.NaN}),
        "values[1] is NaN: every value must be finite");
    refused(
        () -> SubgroupChart.of(new double[][] {{1, 2}, {1, 2, 3}}),
        "subgroups[1] has 3 values and subgroups[0] has 2: they must have the same length");
    refused(
        () -> SubgroupChart.of(new double[][] {{1, 2}}),
        "subgroups has 1 subgroups: a chart needs at least 2");
    refused(() -> SubgroupConstants.of(1), "n is 1: it must lie between 2 and 1000");
    refused(
        () -> IndividualsChart.movingRanges(new double[] {1}),
        "values has 1 values: a moving range needs at least 2");
    refused(
        () -> new CheckStandardControl(0, 0, 1, 5, 3, 0.05),
        "|slope| is 0.0: it must be finite and above zero");
    refused(
        () -> AverageRunLength.ewma(0.2, -1, 0), "width is -1.0: it must be finite and above zero");
  }

  private static void refused(Runnable call, String message) {
    assertThatThrownBy(call::run).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }
}
