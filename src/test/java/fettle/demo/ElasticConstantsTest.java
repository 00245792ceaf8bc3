package fettle.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ElasticConstantsTest {
  // 1/((1-nu**2)/E + (1-0.07**2)/1141) in Python; E and ν are handbook values from memory.
  @ParameterizedTest
  @CsvSource({
    "210, 0.30, 192.1", "205, 0.29, 187.3", "195, 0.29, 179.6", "169, 0.275, 157.7",
    "110, 0.26, 107.0", "114, 0.34, 115.9", "120, 0.34, 121.3", "105, 0.35, 108.4",
    "120, 0.33, 120.5", "70, 0.33, 73.5", "45, 0.29, 47.1", "600, 0.22, 406.8"
  })
  void reducedModulusAgainstDiamond(double modulus, double poisson, double expected) {
    ElasticConstants specimen = new ElasticConstants(modulus, poisson);
    assertThat(specimen.reducedModulusGpa(ElasticConstants.DIAMOND))
        .isCloseTo(expected, within(0.05));
  }

  @Test
  void reducedModulusDoesNotAskWhichBodyComesFirst() {
    assertThat(ElasticConstants.STEEL.reducedModulusGpa(ElasticConstants.DIAMOND))
        .isEqualTo(ElasticConstants.DIAMOND.reducedModulusGpa(ElasticConstants.STEEL));
  }

  @Test
  void anImpossiblePoissonRatioIsRefused() {
    assertThatThrownBy(() -> new ElasticConstants(210, 0.6))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("poissonRatio 0.6: above -1 and at most 0.5 expected");
  }
}
