package fettle.report;

import fettle.quantity.UncertaintyRounding;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers as a reader sees them: decimal point, true minus sign, no grouping, plain digits except
 * where they would run away.
 */
final class Figures {
  /** Between a number and its unit, so that no line breaks there. */
  static final String NBSP = "\u00a0";

  private static final String MINUS = "\u2212";
  private static final String SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";
  private static final int WIDEST_PLAIN_EXPONENT = 6;

  private Figures() {}

  /** A value whose last place is that of its uncertainty's second significant digit. */
  static String value(double value, double uncertainty) {
    if (!Double.isFinite(value)) {
      return "–";
    }
    return isUncertainty(uncertainty)
        ? typeset(UncertaintyRounding.of(value, uncertainty).valueText())
        : significant(value, 6);
  }

  /** An uncertainty with two significant digits. */
  static String uncertainty(double uncertainty) {
    if (uncertainty == 0) {
      return "0";
    }
    return isUncertainty(uncertainty)
        ? typeset(UncertaintyRounding.of(0, uncertainty).uncertaintyText())
        : "–";
  }

  /** {@code 192.3 ± 1.4}. */
  static String pair(double value, double uncertainty) {
    return value(value, uncertainty) + NBSP + "±" + NBSP + uncertainty(uncertainty);
  }

  private static boolean isUncertainty(double uncertainty) {
    return uncertainty > 0 && !Double.isInfinite(uncertainty);
  }

  /** A value with a number of significant digits. */
  static String significant(double value, int digits) {
    if (!Double.isFinite(value)) {
      return infinite(value);
    }
    if (value == 0) {
      return "0";
    }
    BigDecimal rounded =
        BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    int exponent = rounded.precision() - rounded.scale() - 1;
    if (exponent > WIDEST_PLAIN_EXPONENT || exponent < -WIDEST_PLAIN_EXPONENT + 1) {
      return power(rounded, exponent, digits - 1);
    }
    return typeset(rounded.setScale(Math.max(0, digits - 1 - exponent)).toPlainString());
  }

  /** A value that a person entered, with the digits it was entered with. */
  static String given(double value) {
    if (!Double.isFinite(value)) {
      return infinite(value);
    }
    return typeset(BigDecimal.valueOf(value).stripTrailingZeros().toPlainString());
  }

  /** A value with a number of decimals. */
  static String fixed(double value, int decimals) {
    if (!Double.isFinite(value)) {
      return infinite(value);
    }
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    return typeset(rounded.toPlainString());
  }

  /** A fraction as percent with two significant digits, without the sign. */
  static String percent(double fraction) {
    return significant(100 * fraction, 2);
  }

  /** A probability: three decimals, and what lies beyond them as a bound. */
  static String probability(double p) {
    if (p < 0.0005) {
      return "<" + NBSP + "0.001";
    }
    return p > 0.9995 ? ">" + NBSP + "0.999" : fixed(p, 3);
  }

  /** A value with its standard uncertainty, both over one power of ten where they need one. */
  static Coefficient coefficient(double value, double uncertainty) {
    if (!isUncertainty(uncertainty) || !Double.isFinite(value)) {
      return new Coefficient(significant(value, 8), "–");
    }
    double size = Math.max(Math.abs(value), uncertainty);
    BigDecimal largest = BigDecimal.valueOf(size);
    int exponent = largest.precision() - largest.scale() - 1;
    if (exponent <= WIDEST_PLAIN_EXPONENT && exponent >= -2) {
      return new Coefficient(value(value, uncertainty), uncertainty(uncertainty));
    }
    UncertaintyRounding rounded = UncertaintyRounding.of(value, uncertainty);
    String power = NBSP + "×" + NBSP + "10" + superscript(exponent);
    return new Coefficient(
        typeset(rounded.value().movePointLeft(exponent).toPlainString()) + power,
        typeset(rounded.expandedUncertainty().movePointLeft(exponent).toPlainString()) + power);
  }

  /**
   * A coefficient for reading.
   *
   * @param value the value
   * @param standardUncertainty its standard uncertainty
   */
  record Coefficient(String value, String standardUncertainty) {}

  /** All digits of a double, for copying. */
  static String full(double value) {
    return Double.toString(value);
  }

  private static String power(BigDecimal rounded, int exponent, int decimals) {
    BigDecimal mantissa =
        rounded.movePointLeft(exponent).setScale(decimals, RoundingMode.UNNECESSARY);
    return typeset(mantissa.toPlainString()) + NBSP + "×" + NBSP + "10" + superscript(exponent);
  }

  private static String superscript(int exponent) {
    StringBuilder text = new StringBuilder(exponent < 0 ? "⁻" : "");
    for (char digit : Integer.toString(Math.abs(exponent)).toCharArray()) {
      text.append(SUPERSCRIPTS.charAt(digit - '0'));
    }
    return text.toString();
  }

  private static String infinite(double value) {
    if (Double.isNaN(value)) {
      return "–";
    }
    return value > 0 ? "∞" : MINUS + "∞";
  }

  private static String typeset(String digits) {
    boolean isZero = digits.chars().noneMatch(c -> c >= '1' && c <= '9');
    String unsigned = isZero && digits.startsWith("-") ? digits.substring(1) : digits;
    return unsigned.replace("-", MINUS);
  }
}
