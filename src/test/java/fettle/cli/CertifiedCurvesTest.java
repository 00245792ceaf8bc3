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
 * NIST Statistical Reference Datasets, nonlinear regression: the two sets whose models are ours,
 * from our own start, through {@code fit --pairs --json}. NIST certifies 11 digits.
 */
class CertifiedCurvesTest {
  @TempDir private Path directory;

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({"danwood,power", "kirby2,rational-2-2"})
  void standsToElevenDigits(String name, String model) throws IOException {
    ReferenceCase file =
        ReferenceCase.load("/fettle/fit/reference/strd-nonlinear/" + name + ".json");
    StringBuilder csv = new StringBuilder("response,hardness\n");
    for (int i = 0; i < file.size("/data/x"); i++) {
      csv.append(file.at("/data/x/" + i).asText())
          .append(',')
          .append(file.at("/data/y/" + i).asText())
          .append('\n');
    }
    Files.writeString(directory.resolve(name + ".csv"), csv);

    Call call = Call.in(directory, "fit", "--pairs", name + ".csv", "--model", model, "--json");

    assertEquals(0, call.status(), call.err());
    JsonNode json = call.json();
    assertEquals(file.size("/expected/parameters"), json.get("coefficients").size());
    for (int k = 0; k < json.get("coefficients").size(); k++) {
      JsonNode coefficient = json.at("/coefficients/" + k);
      String b = "/b" + (k + 1);
      CorrectDigits.atLeast(
          11, coefficient.get("value").doubleValue(), file.at("/expected/parameters" + b), b);
      CorrectDigits.atLeast(
          11,
          coefficient.get("standardUncertainty").doubleValue(),
          file.at("/expected/standard_deviations" + b),
          "SD of " + b);
    }
    CorrectDigits.atLeast(
        11,
        json.get("residualStandardDeviation").doubleValue(),
        file.at("/expected/residual_standard_deviation"),
        "residual SD");
    assertTrue(json.get("converged").booleanValue());
  }
}
