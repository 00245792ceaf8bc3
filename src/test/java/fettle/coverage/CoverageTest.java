package fettle.coverage;

import static org.assertj.core.api.Assertions.assertThat;

import fettle.fit.FitFailedException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The stated intervals hold the simulated truth as often as they claim. */
class CoverageTest {
  /**
   * 2,000 campaigns at five responses that are not independent: 0.5 % standard deviation at most.
   */
  @ParameterizedTest
  @CsvSource({
    "polynomial-1,false", "polynomial-1,true", "polynomial-2,false", "polynomial-2,true",
    "power,false", "power,true", "log-polynomial-2,false", "log-polynomial-2,true"
  })
  void withUncertaintiesAsStated(String model, boolean shared) throws FitFailedException {
    assertThat(PairsCoverage.coverage(model, 7, shared, 2000, 5)).isBetween(0.94, 0.96);
  }

  /** 150 whole dossiers: 2 % standard deviation at most, so this finds only a broken interval. */
  @Test
  void withScatterEstimated() {
    var shares = new DossierCoverage("power", 7, 4, 3, 0.007, 0.007, 0.006).measure(150, 3);
    assertThat(shares.curve()).isGreaterThan(0.93);
    assertThat(shares.newPiece()).isGreaterThan(0.93);
  }
}
