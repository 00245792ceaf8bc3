package fettle.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DemoTruthTest {
  private static final DemoLaboratory LABORATORY =
      DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED);

  @ParameterizedTest
  @CsvSource({
    "nab-as-cast-hv10, 140", "nab-as-cast-hv10, 250", "nab-annealed-hv10, 125",
    "nab-quenched-tempered-hv10, 320", "nab-as-cast-hbw, 140", "nab-as-cast-hbw, 240"
  })
  void curveAndItsInverseAgree(String dossier, double hardness) {
    DemoTruth truth = LABORATORY.truth(dossier);
    assertThat(truth.trueHardness(truth.response(hardness)) / hardness).isCloseTo(1, within(1e-12));
  }

  // HV at equal shift and force goes with E_r² and with the contact area, here 1.03 to 1.00.
  @ParameterizedTest
  @ValueSource(doubles = {2100, 2400, 2700})
  void membersDifferByTheSquareOfTheirReducedModuliAndTheirContactAreas(double shift) {
    double cast = LABORATORY.truth("nab-as-cast-hv10").trueHardness(shift);
    double tempered = LABORATORY.truth("nab-quenched-tempered-hv10").trueHardness(shift);
    double eCast = 1 / ((1 - 0.33 * 0.33) / 121 + (1 - 0.07 * 0.07) / 1141);
    double eTempered = 1 / ((1 - 0.33 * 0.33) / 126 + (1 - 0.07 * 0.07) / 1141);
    double expected = 1.03 * eTempered * eTempered / (eCast * eCast);
    assertThat(tempered / cast / expected).isCloseTo(1, within(1e-9));
  }

  @Test
  void asCastAndAnnealedNearlyShareACurve() {
    for (double shift = 2300; shift <= 3000; shift += 100) {
      double cast = LABORATORY.truth("nab-as-cast-hv10").trueHardness(shift);
      double annealed = LABORATORY.truth("nab-annealed-hv10").trueHardness(shift);
      assertThat(annealed / cast).isCloseTo(1, within(0.005));
    }
  }

  @Test
  void certifiedHardnessIsNearTheTrueOne() {
    // Five standard uncertainties of a certificate: 5 · √(0.8² + 0.6²) %.
    DemoTruth truth = LABORATORY.truth("nab-as-cast-hbw");
    LABORATORY.blocks().stream()
        .filter(block -> block.id().startsWith("NR"))
        .forEach(
            block ->
                assertThat(
                        block.certificates().get(0).certified() / truth.trueHardnessOf(block.id()))
                    .isCloseTo(1, within(0.05)));
  }

  @Test
  void aBlockOfAnotherDossierIsRefused() {
    assertThatThrownBy(() -> LABORATORY.truth("nab-as-cast-hbw").trueHardnessOf("NC-01"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("block NC-01: one of [NR-01, ");
  }
}
