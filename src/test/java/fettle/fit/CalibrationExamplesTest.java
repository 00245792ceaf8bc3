package fettle.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import fettle.reference.CorrectDigits;
import fettle.reference.ReferenceCase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Calibration curves of handbooks and standards: the fit of each. Their reading of a stimulus from
 * a response, by inverting the curve, is not what we do: our curves are fitted in the direction in
 * which they are read. So not covered here are the inverse readings of arsenic, crystal, din32645,
 * massart-example1, quam-a5-cadmium, ehb-linewidth, ehb-loadcell, ehb-pontius and nasturtium; of
 * crystal nothing else is published.
 */
class CalibrationExamplesTest {
  private static final String[] POWERS = {"a", "b", "c"};

  private static void assertNumber(double value, JsonNode expected, String what) {
    CorrectDigits.atLeast(11, value, expected, what);
    if (expected.isObject()) {
      CorrectDigits.roundsToPrinted(value, expected, what);
    }
  }

  private static void assertIfThere(double value, JsonNode at, String name) {
    if (at.has(name)) {
      assertNumber(value, at.get(name), name);
    }
  }

  @ParameterizedTest(name = "{0} {4}")
  @CsvSource({
    "arsenic-inverse-prediction, actual, measured, 1, ''",
    "din32645-calibration, x, y, 1, ''",
    "massart-example1, x, y, 1, ''",
    "quam-a5-cadmium, c, A, 1, ''",
    "ehb-linewidth-calibration, x, y, 1, ''",
    "ehb-pressure-temperature, temperature, pressure, 1, ''",
    "ehb-loadcell-quadratic, x, y, 1, /straight_line",
    "ehb-loadcell-quadratic, x, y, 2, /quadratic",
    "ehb-pontius-load-cell-case, x, y, 1, /straight_line",
    "ehb-pontius-load-cell-case, x, y, 2, /quadratic"
  })
  void curve(String name, String x, String y, int degree, String place) throws FitFailedException {
    ReferenceCase file = ReferenceCase.load("/fettle/fit/reference/calibration/" + name + ".json");
    Points points = Points.plain(file.column("/data/" + x), file.column("/data/" + y));
    CurveFit fit = CurveSolver.fit(new ModelId("polynomial-" + degree), points);
    JsonNode expected = file.at("/expected" + place);
    ReportedCoefficients reported = fit.reported();
    if (place.isEmpty()) {
      assertNumber(reported.values()[0], expected.get("intercept"), "intercept");
      assertNumber(reported.values()[1], expected.get("slope"), "slope");
      assertIfThere(reported.standardUncertainty(0), expected, "se_intercept");
      assertIfThere(reported.standardUncertainty(1), expected, "se_slope");
    } else {
      for (int k = 0; k <= degree; k++) {
        assertNumber(reported.values()[k], expected.get(POWERS[k]), POWERS[k]);
        assertIfThere(reported.standardUncertainty(k), expected, "se_" + POWERS[k]);
      }
    }
    assertNumber(fit.residualStandardDeviation(points), expected.get("residual_sd"), "residual_sd");
    if (expected.has("covariance")) {
      for (int j = 0; j <= degree; j++) {
        for (int k = 0; k <= degree; k++) {
          CorrectDigits.atLeast(
              10.5,
              reported.covariance()[j * (degree + 1) + k],
              expected.get("covariance").get(j).get(k),
              "covariance");
        }
      }
    }
    if (expected.has("degrees_of_freedom")) {
      assertEquals(expected.get("degrees_of_freedom").intValue(), fit.degreesOfFreedom());
    }
  }

  @Test
  void nasturtium() throws FitFailedException {
    ReferenceCase file =
        ReferenceCase.load("/fettle/fit/reference/calibration/nasturtium-nonlinear-inverse.json");
    FormulaModel model =
        new FormulaModel(
            "log-logistic",
            3,
            (x, b) ->
                x.value == 0 ? b[0] : b[0].over(x.log().times(b[2]).plus(b[1]).exp().plus(1)));
    CurveFit fit =
        CurveSolver.fit(
            model,
            Points.plain(file.column("/data/conc"), file.column("/data/weight")),
            file.column("/settings/start"));
    for (int k = 0; k < 3; k++) {
      String theta = "theta" + (k + 1);
      assertNumber(fit.beta()[k], file.at("/expected/parameters/" + theta), theta);
    }
    assertNumber(fit.chiSquared(), file.at("/expected/residual_sum_of_squares"), "RSS");
  }
}
