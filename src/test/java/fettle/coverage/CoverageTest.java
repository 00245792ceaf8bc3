package fettle.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.fit.FitFailedException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A short run of the coverage studies, in every test run: the intervals hold what they claim. */
class CoverageTest {
  private static final int CAMPAIGNS = 2000;
  private static final String[] MODELS = {
    "polynomial-1", "polynomial-2", "power", "log-polynomial-2"
  };

  /**
   * 2,000 campaigns tell a share near 95 % to √(0.95 · 0.05 / 2000) = 0.5 %, if the five responses
   * of a campaign told no more than one: ±1.2 % is 2.5 times that. All eight together are good to
   * 0.2 %.
   */
  @Test
  void statedUncertaintiesHoldTheCurve() throws FitFailedException {
    double sum = 0;
    for (int k = 0; k < MODELS.length; k++) {
      for (boolean shared : new boolean[] {false, true}) {
        double share = PairsCoverage.coverage(MODELS[k], 7, shared, CAMPAIGNS, 20240701 + 2 * k);
        assertEquals(0.95, share, 0.012, MODELS[k] + (shared ? " shared" : " independent"));
        sum += share;
      }
    }
    assertEquals(0.95, sum / (2 * MODELS.length), 0.01);
  }

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
