package fettle.fit;

import fettle.reference.CorrectDigits;
import fettle.reference.ReferenceCase;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * A power law with shared errors of responses and of hardnesses, against an independent solution:
 * dense covariance matrices, exact Newton on all unknowns, 60 digits (solve.py beside the case).
 */
class CorrelatedFitTest {
  private static double[] column(ReferenceCase file, String pointer) {
    double[] values = new double[file.size(pointer)];
    Arrays.setAll(values, i -> Double.parseDouble(file.at(pointer + "/" + i).textValue()));
    return values;
  }

  private static double[][] columns(ReferenceCase file, String pointer) {
    double[][] values = new double[file.size(pointer)][];
    Arrays.setAll(values, k -> column(file, pointer + "/" + k));
    return values;
  }

  private static double[] squares(double[] u) {
    return Arrays.stream(u).map(x -> x * x).toArray();
  }

  @Test
  void powerLawWithSharedErrorsInBothCoordinates() throws FitFailedException {
    ReferenceCase file =
        ReferenceCase.load("/fettle/fit/reference/correlated/correlated-power.json");
    Points points =
        Points.of(
            column(file, "/data/r"),
            column(file, "/data/h"),
            squares(column(file, "/data/u_r")),
            squares(column(file, "/data/u_h")),
            columns(file, "/data/response_effects"),
            columns(file, "/data/hardness_effects"));
    CurveFit fit = CurveSolver.fit(new ModelId("power"), points);
    ReportedCoefficients law = fit.reported();
    String[] names = {"a", "b"};
    for (int k = 0; k < 2; k++) {
      CorrectDigits.atLeast(
          11, law.values()[k], file.at("/expected/coefficients/" + names[k]), names[k]);
      for (int j = 0; j < 2; j++) {
        CorrectDigits.atLeast(
            11, law.covariance()[2 * k + j], file.at("/expected/covariance/" + k + "/" + j), "cov");
      }
    }
    CorrectDigits.atLeast(11, fit.chiSquared(), file.at("/expected/chi_squared"), "Q");
    for (int i = 0; i < points.size(); i++) {
      CorrectDigits.atLeast(
          12, fit.adjustedResponses()[i], file.at("/expected/adjusted_responses/" + i), "ξ");
    }
  }
}
