package fettle.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fettle.reference.CorrectDigits;
import fettle.reference.ReferenceCase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * NIST Statistical Reference Datasets, linear regression, through {@code fit --pairs --json}: what
 * a user's script reads. Compared with the exact rational solution kept in each file, which rounds
 * to the certified digits. Longley (several regressors) and NoInt1 (no constant) are no calibration
 * curves of ours.
 */
class CertifiedPolynomialsTest {
  @TempDir private Path directory;

  @ParameterizedTest(name = "{0}: polynomial-{1}")
  @CsvSource({"norris,1", "pontius,2", "wampler1,5", "wampler2,5", "wampler3,5", "filip,10"})
  void standsToFifteenDigits(String name, int degree) throws IOException {
    ReferenceCase file = ReferenceCase.load("/fettle/fit/reference/strd-linear/" + name + ".json");
    StringBuilder csv = new StringBuilder("response,hardness\n");
    for (int i = 0; i < file.size("/data/x"); i++) {
      csv.append(file.at("/data/x/" + i).decimalValue().toPlainString())
          .append(',')
          .append(file.at("/data/y/" + i).decimalValue().toPlainString())
          .append('\n');
    }
    Files.writeString(directory.resolve(name + ".csv"), csv);

    Call call =
        Call.in(
            directory,
            "fit",
            "--pairs",
            name + ".csv",
            "--model",
            "polynomial-" + degree,
            "--json");

    assertEquals(0, call.status(), call.err());
    assertEquals("", call.err());
    JsonNode json = call.json();
    assertEquals(name + ".csv", json.get("file").textValue());
    assertTrue(json.get("converged").booleanValue());
    assertEquals(degree + 1, json.get("coefficients").size());
    for (int k = 0; k <= degree; k++) {
      JsonNode coefficient = json.at("/coefficients/" + k);
      assertEquals("b" + k, coefficient.get("name").textValue());
      double value = coefficient.get("value").doubleValue();
      JsonNode expected = file.at("/expected/parameters/B" + k);
      CorrectDigits.atLeast(15, value, expected, "B" + k);
      double deviation = coefficient.get("standardUncertainty").doubleValue();
      JsonNode expectedDeviation = file.at("/expected/standard_deviations/B" + k);
      CorrectDigits.atLeast(15, deviation, expectedDeviation, "SD of B" + k);
      assertEquals(
          deviation * deviation,
          json.at("/covariance/" + k + "/" + k).doubleValue(),
          1e-14 * deviation * deviation);
    }
    double residual = json.get("residualStandardDeviation").doubleValue();
    JsonNode expectedResidual = file.at("/expected/residual_standard_deviation");
    CorrectDigits.atLeast(15, residual, expectedResidual, "residual SD");
    assertEquals(file.number("/expected/residual_df"), json.get("degreesOfFreedom").intValue());
  }
}
