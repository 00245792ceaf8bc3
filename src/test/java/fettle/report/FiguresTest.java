package fettle.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class FiguresTest {
  @Test
  void roundsAValueToThePlaceOfItsUncertainty() {
    // JCGM 100:2008, 7.2.6 (from memory): 10.057 62 Ω with u = 27 mΩ is given as 10.058 Ω.
    assertEquals("10.058", Figures.value(10.05762, 0.027));
    // JCGM 100:2008, H.1.6 (from memory): 50.000 838 mm with U = 93 nm.
    assertEquals("50.000838\u00a0±\u00a00.000093", Figures.pair(50.000838, 0.000093));
    assertEquals("192.3\u00a0±\u00a01.4", Figures.pair(192.3141, 1.3812));
    assertEquals("190\u00a0±\u00a012", Figures.pair(190.49, 11.7));
    assertEquals("10", Figures.uncertainty(9.96));
  }

  @Test
  void writesATrueMinusAndNoNegativeZero() {
    assertEquals("−0.40", Figures.value(-0.4, 0.12));
    assertEquals("0.00", Figures.value(-0.001, 0.12));
    assertEquals("−1.20", Figures.fixed(-1.2, 2));
  }

  @Test
  void keepsDigitsPlainUntilTheyRunAway() {
    assertEquals("0.0041", Figures.significant(0.00412, 2));
    assertEquals("2500.0", Figures.significant(2500, 5));
    assertEquals("1.23\u00a0×\u00a010⁹", Figures.significant(1.2345e9, 3));
    assertEquals("4.9\u00a0×\u00a010⁻¹³", Figures.significant(4.873e-13, 2));
    assertEquals("0", Figures.significant(0, 3));
  }

  @Test
  void putsACoefficientAndItsUncertaintyOverOnePower() {
    Figures.Coefficient large = Figures.coefficient(8.568675739e8, 1.4912e8);
    assertEquals("8.6\u00a0×\u00a010⁸", large.value());
    assertEquals("1.5\u00a0×\u00a010⁸", large.standardUncertainty());
    Figures.Coefficient small = Figures.coefficient(-3.2145e-5, 4.1e-7);
    assertEquals("−3.214\u00a0×\u00a010⁻⁵", small.value());
    assertEquals("0.041\u00a0×\u00a010⁻⁵", small.standardUncertainty());
    Figures.Coefficient plain = Figures.coefficient(-1.951623892, 0.0223);
    assertEquals("−1.952", plain.value());
    assertEquals("0.022", plain.standardUncertainty());
  }

  @Test
  void boundsProbabilitiesAtTheirThirdDecimal() {
    assertEquals("<\u00a00.001", Figures.probability(3.5e-58));
    assertEquals("0.106", Figures.probability(0.10612));
    assertEquals(">\u00a00.999", Figures.probability(0.99999));
  }

  @Test
  void givesBackWhatAPersonEntered() {
    assertEquals("98", Figures.given(98.0));
    assertEquals("0.03", Figures.given(0.03));
    assertEquals("3000", Figures.given(3e3));
  }

  @Test
  void saysThatAFigureIsMissing() {
    assertEquals("–", Figures.value(Double.NaN, 1));
    assertEquals("–", Figures.uncertainty(Double.NaN));
    assertEquals("∞", Figures.significant(Double.POSITIVE_INFINITY, 3));
  }
}
