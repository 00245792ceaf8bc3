package fettle.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Numbers in findings, by hand. */
class FigureTest {
  @Test
  void cutsZerosOfStatedNumbersAndKeepsThoseOfMeasuredOnes() {
    assertThat(Figure.of(5, 3)).isEqualTo("5");
    assertThat(Figure.of(2.50, 3)).isEqualTo("2.5");
    assertThat(Figure.measured(7.0, 2)).isEqualTo("7.0");
    assertThat(Figure.measured(249.04, 4)).isEqualTo("249.0");
  }

  @Test
  void neverCutsDigitsBeforeThePoint() {
    assertThat(Figure.of(78_012.4, 2)).isEqualTo("78012");
    assertThat(Figure.measured(123.4, 2)).isEqualTo("123");
  }

  @Test
  void usesPowersOfTenForVeryLargeAndVerySmall() {
    assertThat(Figure.of(1e8, 3)).isEqualTo("1·10⁸");
    assertThat(Figure.of(-2.5e-10, 2)).isEqualTo("−2.5·10⁻¹⁰");
    assertThat(Figure.of(0, 2)).isEqualTo("0");
    assertThat(Figure.of(Double.NaN, 2)).isEqualTo("not a number");
  }
}
