package fettle.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import fettle.reference.CorrectDigits;
import fettle.reference.ReferenceCase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A parabola through nine points with both coordinates uncertain and two groups of shared errors,
 * through {@code fit --pairs --json}, against an independent solution: dense covariance matrices,
 * exact Newton on all unknowns, 60 digits (solve.py beside the case).
 */
class CorrelatedPairsTest {
  @TempDir private Path directory;

  @Test
  void parabolaWithGroups() throws IOException {
    ReferenceCase file =
        ReferenceCase.load("/fettle/fit/reference/correlated/correlated-polynomial.json");
    StringBuilder csv = new StringBuilder("response,hardness,u_response,u_hardness,group,u_shared");
    for (int i = 0; i < file.size("/data/r"); i++) {
      String separator = "\n";
      for (String column : new String[] {"r", "h", "u_r", "u_h", "group", "u_shared"}) {
        csv.append(separator).append(file.at("/data/" + column + "/" + i).textValue());
        separator = ",";
      }
    }
    Files.writeString(directory.resolve("parabola.csv"), csv + "\n");

    Call call =
        Call.in(directory, "fit", "--pairs", "parabola.csv", "--model", "polynomial-2", "--json");

    assertEquals(0, call.status(), call.err());
    JsonNode json = call.json();
    for (int k = 0; k < 3; k++) {
      JsonNode coefficient = json.at("/coefficients/" + k);
      String b = "/b" + k;
      CorrectDigits.atLeast(
          10, coefficient.get("value").doubleValue(), file.at("/expected/coefficients" + b), b);
      CorrectDigits.atLeast(
          10,
          coefficient.get("standardUncertainty").doubleValue(),
          file.at("/expected/standard_uncertainties" + b),
          "u" + b);
      for (int j = 0; j < 3; j++) {
        String pointer = "/" + k + "/" + j;
        CorrectDigits.atLeast(
            10,
            json.at("/covariance" + pointer).doubleValue(),
            file.at("/expected/covariance" + pointer),
            "covariance" + pointer);
      }
    }
    CorrectDigits.atLeast(
        10, json.get("chiSquared").doubleValue(), file.at("/expected/chi_squared"), "Q");
    for (int i = 0; i < 9; i++) {
      CorrectDigits.atLeast(
          12,
          json.at("/points/" + i + "/adjustedResponse").doubleValue(),
          file.at("/expected/adjusted_responses/" + i),
          "ξ" + i);
    }
  }
}
