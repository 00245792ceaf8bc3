package fettle.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UncertaintyRoundingTest {
  @ParameterizedTest
  @CsvSource({
    // JCGM 100:2008, 7.2.6: 10.057 62 ohm with 27 milliohm; 28.05 kHz goes down to 28 kHz.
    "10.05762, 0.027, 10.058, 0.027",
    "1000, 28.05, 1000, 28",
    // JCGM 100:2008, 7.2.4: 100.021 47 g with U = 0.79 mg.
    "100.02147, 0.00079, 100.02147, 0.00079",
    // EA-4/02 M:2013, S2 (weight, in mg over 10 kg), S3 (resistor, ohm), S4 (gauge block, mm); the
    // unrounded U is 2u with the u printed there. From memory.
    "25, 58.6, 25, 59",
    "10000.178, 0.01666, 10000.178, 0.017",
    "49.999926, 0.0000728, 49.999926, 0.000073",
  })
  void followsPublishedExamples(double value, double u, String valueText, String uText) {
    UncertaintyRounding rounded = UncertaintyRounding.of(value, u);
    assertEquals(valueText, rounded.valueText());
    assertEquals(uText, rounded.uncertaintyText());
  }

  // By hand: carries, short numbers, places left of the point, halves by ISO 80000-1 B.3 rule A.
  @ParameterizedTest
  @CsvSource({
    "245.37, 9.96, 245, 10",
    "245.37, 99.6, 250, 100",
    "245.37, 3, 245.4, 3.0",
    "245.37, 0.995, 245.4, 1.0",
    "12345.6, 1234, 12300, 1200",
    "240.125, 0.15, 240.12, 0.15",
    "240.135, 0.15, 240.14, 0.15",
    "-0.04, 2.5, 0.0, 2.5",
    "-245.37, 3.14, -245.4, 3.1",
    "0.1, 0.125, 0.10, 0.13",
    "0.0000012345, 0.000000067, 0.000001234, 0.000000067",
    "240, 0.0001, 240.00000, 0.00010",
  })
  void roundsBothToTheSamePlace(double value, double u, String valueText, String uText) {
    UncertaintyRounding rounded = UncertaintyRounding.of(value, u);
    assertEquals(valueText, rounded.valueText());
    assertEquals(uText, rounded.uncertaintyText());
  }

  // EA-4/02 M:2022, 6.3: up, where the nearest would take off more than 5 %. 1.04 loses 3.8 %.
  @ParameterizedTest
  @CsvSource({"0.14, 0.2", "1.04, 1", "1.06, 2", "0.96, 1", "2.09, 2", "2.11, 3", "0.0094, 0.009"})
  void neverUnderstatesByMoreThanFivePercent(double u, String uText) {
    assertEquals(uText, UncertaintyRounding.of(0, u, 1).uncertaintyText());
  }

  @Test
  void staysWithinFivePercentBelowForAnyNumber() {
    Random random = new Random(426);
    for (int i = 0; i < 100_000; i++) {
      double u = Math.pow(10, random.nextDouble() * 20 - 10);
      for (int digits = 1; digits <= 2; digits++) {
        UncertaintyRounding rounded = UncertaintyRounding.of(u * 3, u, digits);
        assertThat(rounded.expandedUncertainty().precision()).isEqualTo(digits);
        assertThat(rounded.value().scale()).isEqualTo(rounded.expandedUncertainty().scale());
        assertThat(rounded.expandedUncertainty().doubleValue() / u).isBetween(0.95, 2.0);
        BigDecimal off = rounded.value().subtract(BigDecimal.valueOf(u * 3)).abs();
        assertThat(off).isLessThanOrEqualTo(rounded.expandedUncertainty().ulp());
      }
    }
  }

  @Test
  void writesInTheLanguageAskedFor() {
    UncertaintyRounding rounded = UncertaintyRounding.of(-12345.678, 0.314);
    assertEquals("-12345.68", rounded.valueText(Locale.ENGLISH));
    assertEquals("-12345,68", rounded.valueText(Locale.GERMAN));
    assertEquals("0,31", rounded.uncertaintyText(Locale.FRENCH));
  }

  @Test
  void usesPowersOfTenOnlyFarOutside() {
    assertEquals("1.0E-20", UncertaintyRounding.of(0, 1e-20).uncertaintyText());
    assertEquals("123000000000000", UncertaintyRounding.of(1.234e14, 2.5e13).valueText());
    assertEquals("1.23E+20", UncertaintyRounding.of(1.2341e20, 2.5e19).valueText());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesUncertaintiesThatAreNone(double u) {
    IllegalArgumentException refusal =
        assertThrows(IllegalArgumentException.class, () -> UncertaintyRounding.of(1, u));
    assertEquals(
        "expandedUncertainty " + u + ": finite and above 0 expected", refusal.getMessage());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.NEGATIVE_INFINITY})
  void refusesValuesThatAreNone(double value) {
    assertThrows(IllegalArgumentException.class, () -> UncertaintyRounding.of(value, 1));
    assertThrows(IllegalArgumentException.class, () -> UncertaintyRounding.of(1, 1, 3));
  }
}
