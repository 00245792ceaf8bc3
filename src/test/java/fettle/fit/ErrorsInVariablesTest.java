package fettle.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.reference.CorrectDigits;
import fettle.reference.ReferenceCase;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Lines and curves with uncertain responses against ISO/TS 28037:2010, York, ODRPACK and Deming
 * regression. Each number is held to the high-precision recomputation kept in its file and must
 * also round to the digits the source prints. Covariances follow York 2004: at the adjusted points,
 * first order.
 */
class ErrorsInVariablesTest {
  private static final ModelId LINE = new ModelId("polynomial-1");

  private static ReferenceCase load(String name) {
    return ReferenceCase.load("/fettle/fit/reference/" + name + ".json");
  }

  private static double[] squares(double[] u) {
    return Arrays.stream(u).map(x -> x * x).toArray();
  }

  private static double[] inverses(double[] weights) {
    return Arrays.stream(weights).map(w -> 1 / w).toArray();
  }

  private static Points points(double[] x, double[] y, double[] vx, double[] vy)
      throws FitFailedException {
    return Points.of(x, y, vx, vy, new double[0][], new double[0][]);
  }

  private static void assertAll(ReferenceCase file, double digits, Object... pointersAndValues) {
    for (int k = 0; k < pointersAndValues.length; k += 2) {
      String pointer = "/expected" + pointersAndValues[k];
      double value = (Double) pointersAndValues[k + 1];
      CorrectDigits.atLeast(digits, value, file.at(pointer), pointer);
      if (file.at(pointer).isObject()) {
        CorrectDigits.roundsToPrinted(value, file.at(pointer), pointer);
      }
    }
  }

  private static void assertLine(ReferenceCase file, CurveFit fit, String uncertainties) {
    ReportedCoefficients line = fit.reported();
    assertAll(
        file,
        12,
        "/a",
        line.values()[0],
        "/b",
        line.values()[1],
        uncertainties + "/u_a",
        line.standardUncertainty(0),
        uncertainties + "/u_b",
        line.standardUncertainty(1),
        uncertainties + "/cov_a_b",
        line.covariance()[1]);
  }

  @ParameterizedTest
  @ValueSource(strings = {"iso28037-6-equal-weights", "iso28037-6-unequal-weights"})
  void isoClause6(String name) throws FitFailedException {
    ReferenceCase file = load("straight-line/" + name);
    double[] x = file.column("/data/x");
    Points points =
        points(x, file.column("/data/y"), new double[x.length], squares(file.column("/data/u_y")));
    CurveFit fit = CurveSolver.fit(LINE, points);
    assertLine(file, fit, "");
    assertAll(file, 12, "/chi2_observed", fit.chiSquared());
    assertEquals(file.at("/expected/degrees_of_freedom").intValue(), fit.degreesOfFreedom());
  }

  @Test
  void isoClause11ForwardEvaluation() throws FitFailedException {
    // The curve's own use: a hardness from an uncertain response. Clause 11.1, a response from a
    // hardness, is the other direction, which a calibration curve h = g(r) does not need.
    ReferenceCase file = load("straight-line/iso28037-6-equal-weights");
    double[] x = file.column("/data/x");
    CurveFit fit =
        CurveSolver.fit(
            LINE,
            points(
                x,
                file.column("/data/y"),
                new double[x.length],
                squares(file.column("/data/u_y"))));
    double at = file.number("/expected/forward_11_2/x");
    double u = file.number("/expected/forward_11_2/u_x");
    double[] line = new double[4];
    fit.model().linearise(at, fit.beta(), line);
    assertAll(
        file,
        12,
        "/forward_11_2/y",
        line[0],
        "/forward_11_2/u_y",
        Math.sqrt(fit.varianceOfCurveAt(at) + line[1] * line[1] * u * u));
  }

  @Test
  void isoAnnexEWithUnknownUncertainty() throws FitFailedException {
    ReferenceCase file = load("straight-line/iso28037-annex-e-unknown-uncertainty");
    Points points = Points.plain(file.column("/data/x"), file.column("/data/y"));
    CurveFit fit = CurveSolver.fit(LINE, points);
    assertLine(file, fit, "");
    assertAll(
        file,
        12,
        "/residual_sum_of_squares",
        fit.chiSquared(),
        "/residual_sd",
        fit.residualStandardDeviation(points));
  }

  @Test
  void isoClause7() throws FitFailedException {
    ReferenceCase file = load("errors-in-variables/iso28037-7-gdr");
    CurveFit fit =
        CurveSolver.fit(
            LINE,
            points(
                file.column("/data/x"),
                file.column("/data/y"),
                squares(file.column("/data/u_x")),
                squares(file.column("/data/u_y"))));
    assertLine(file, fit, "");
    assertAll(file, 12, "/chi2_observed", fit.chiSquared());
    for (int i = 0; i < 6; i++) {
      // Twelve digits are kept in the file.
      CorrectDigits.atLeast(
          11, fit.adjustedResponses()[i], file.at("/expected/adjusted_x/" + i), "x" + i);
    }
  }

  private static CurveFit york(ReferenceCase file, boolean exchanged) throws FitFailedException {
    double[] x = file.column("/data/x");
    double[] y = file.column("/data/y");
    double[] vx = inverses(file.column("/data/weight_x"));
    double[] vy = inverses(file.column("/data/weight_y"));
    return CurveSolver.fit(LINE, exchanged ? points(y, x, vy, vx) : points(x, y, vx, vy));
  }

  @Test
  void pearsonWithYorksWeights() throws FitFailedException {
    ReferenceCase file = load("errors-in-variables/pearson-york");
    CurveFit fit = york(file, false);
    assertLine(file, fit, "/first_order_york_2004");
    double mean = fit.chiSquared() / fit.degreesOfFreedom();
    ReportedCoefficients line = fit.reported();
    assertAll(
        file,
        12,
        "/S",
        fit.chiSquared(),
        "/S_over_n_minus_2",
        mean,
        "/scaled_by_sqrt_S_over_n_minus_2/u_a",
        Math.sqrt(mean) * line.standardUncertainty(0),
        "/scaled_by_sqrt_S_over_n_minus_2/u_b",
        Math.sqrt(mean) * line.standardUncertainty(1));
    for (int i = 0; i < 10; i++) {
      CorrectDigits.atLeast(
          11, fit.adjustedResponses()[i], file.at("/expected/x_adjusted/" + i), "x" + i);
    }
  }

  @Test
  void exchangingTheAxesGivesTheSameLine() throws FitFailedException {
    ReferenceCase file = load("errors-in-variables/pearson-york");
    CurveFit fit = york(file, false);
    CurveFit other = york(file, true);
    double[] line = fit.reported().values();
    double[] inverse = other.reported().values();
    assertEquals(1 / line[1], inverse[1], 1e-13 * Math.abs(inverse[1]));
    assertEquals(-line[0] / line[1], inverse[0], 1e-13 * Math.abs(inverse[0]));
    assertEquals(fit.chiSquared(), other.chiSquared(), 1e-13 * fit.chiSquared());
    // y = a + b x read as x = −a/b + y/b: u(1/b) = u(b)/b², to first order.
    assertEquals(
        fit.reported().standardUncertainty(1) / (line[1] * line[1]),
        other.reported().standardUncertainty(1),
        1e-13);
  }

  @Test
  void odrpackExplicitExample() throws FitFailedException {
    ReferenceCase file = load("errors-in-variables/odrpack-explicit");
    double[] x = file.column("/data/x");
    double[] vx = new double[x.length];
    double[] vy = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      vx[i] = file.at("/settings/x_fixed/" + i).booleanValue() ? 0 : 1;
      vy[i] = 1;
    }
    FormulaModel model =
        new FormulaModel(
            "odrpack-explicit",
            3,
            (t, b) -> b[0].plus(b[1].times(b[2].times(t).oneMinusExp().square())));
    CurveFit fit =
        CurveSolver.fit(
            model, points(x, file.column("/data/y"), vx, vy), file.column("/settings/start"));
    double s = Math.sqrt(fit.chiSquared() / fit.degreesOfFreedom());
    assertEquals(file.at("/expected/degrees_of_freedom").intValue(), fit.degreesOfFreedom());
    for (int k = 0; k < 3; k++) {
      assertAll(
          file,
          11,
          "/parameters/b" + (k + 1),
          fit.beta()[k],
          "/cov_unscaled_diagonal/" + k,
          fit.covariance()[4 * k],
          "/sd/b" + (k + 1),
          s * fit.reported().standardUncertainty(k));
    }
    assertAll(
        file,
        12,
        "/weighted_sum_of_squares",
        fit.chiSquared(),
        "/residual_sd",
        s,
        "/delta_point_4",
        fit.adjustedResponses()[3] - x[3],
        "/delta_point_8",
        fit.adjustedResponses()[7] - x[7]);
  }

  @Test
  void demingLines() throws FitFailedException {
    // Equal variances: their size moves neither line. Slope and intercept only, for the published
    // standard errors are another, analytic formula.
    ReferenceCase file = load("errors-in-variables/creatinine-deming");
    double[] x = file.column("/data/x");
    double[] one = new double[x.length];
    Arrays.fill(one, 0.01);
    double[] line =
        CurveSolver.fit(LINE, points(x, file.column("/data/y"), one, one)).reported().values();
    assertAll(file, 12, "/intercept", line[0], "/slope", line[1]);
  }

  @Test
  void demingLineWithUnequalVariances() throws FitFailedException {
    ReferenceCase file = load("errors-in-variables/deming-simple");
    double[] x = file.column("/data/x");
    double[] y = file.column("/data/y");
    double[] one = new double[x.length];
    Arrays.fill(one, 1);
    double[] four = new double[x.length];
    Arrays.fill(four, 4);
    double[] equal = CurveSolver.fit(LINE, points(x, y, one, one)).reported().values();
    double[] unequal = CurveSolver.fit(LINE, points(x, y, one, four)).reported().values();
    double[] exchanged = CurveSolver.fit(LINE, points(y, x, one, one)).reported().values();
    assertAll(
        file,
        12,
        "/k_1/slope",
        equal[1],
        "/k_1/intercept",
        equal[0],
        "/k_4/slope",
        unequal[1],
        "/k_4/intercept",
        unequal[0],
        "/swap_xy_k_1/slope",
        exchanged[1]);
  }
}
