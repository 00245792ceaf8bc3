package fettle.coverage;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A short run of the coverage study of dossiers over models and layouts. */
class DossierCoverageTest {
  /**
   * Whole dossiers whose blocks scatter by as much as their certificates: marginalising the scatter
   * makes the intervals wide, so they hold 97 % and more. 100 campaigns tell that to 1.7 %; below
   * 93 % would be 2.4 times as far off.
   */
  @ParameterizedTest(name = "{0}, {2} runs")
  @CsvSource({
    "polynomial-1, 7, 4, 3",
    "polynomial-2, 7, 1, 8",
    "polynomial-2, 7, 4, 3",
    "power, 7, 1, 8",
    "log-polynomial-2, 7, 4, 3"
  })
  void dossiersHoldTheCurveAndANewPiece(String model, int blocks, int runs, int readings) {
    double u = 0.007;
    DossierCoverage.Shares shares =
        new DossierCoverage(model, blocks, runs, readings, u, u, runs == 1 ? 0 : 0.006)
            .measure(100, 20240702);
    assertTrue(shares.curve() >= 0.93, model + ": curve " + shares.curve());
    assertTrue(shares.newPiece() >= 0.93, model + ": new piece " + shares.newPiece());
    // Wide intervals hold anything: they must stay of use.
    assertTrue(shares.medianHalfWidth() < 0.06, model + ": U/h " + shares.medianHalfWidth());
  }
}
