package fettle.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/**
 * A value and its expanded uncertainty rounded for a reader.
 *
 * <p>The uncertainty is rounded to at most two significant digits, and the value to the same
 * decimal place (GUM, JCGM 100:2008, 7.2.6). If rounding would make the uncertainty smaller by more
 * than 5 %, it is rounded up instead (EA-4/02 M:2022, 6.3); with two digits that cannot happen,
 * with one it can. Halves go up for the uncertainty and to the even digit for the value (ISO
 * 80000-1:2009, B.3, rule A). Work always starts from the decimal digits that a double prints as,
 * so that 0.125 is a half.
 *
 * @param value rounded value; its scale is the decimal place
 * @param expandedUncertainty rounded uncertainty, in the unit of the value
 */
public record UncertaintyRounding(BigDecimal value, BigDecimal expandedUncertainty) {
  private static final BigDecimal SMALLEST_SHARE = new BigDecimal("0.95");
  private static final double PLAIN_BELOW = 1e15;
  private static final double PLAIN_ABOVE = 1e-15;

  /** Checks the uncertainty. */
  public UncertaintyRounding {
    if (expandedUncertainty.signum() <= 0) {
      throw new IllegalArgumentException(
          "expandedUncertainty " + expandedUncertainty + ": above 0 expected");
    }
  }

  /**
   * Rounds to two significant digits of the uncertainty.
   *
   * @param value finite
   * @param expandedUncertainty finite, above 0, in the unit of the value
   * @return both rounded
   */
  public static UncertaintyRounding of(double value, double expandedUncertainty) {
    return of(value, expandedUncertainty, 2);
  }

  /**
   * Rounds to one or two significant digits of the uncertainty.
   *
   * @param value finite
   * @param expandedUncertainty finite, above 0, in the unit of the value
   * @param digits significant digits of the uncertainty, 1 or 2
   * @return both rounded
   */
  public static UncertaintyRounding of(double value, double expandedUncertainty, int digits) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("value " + value + ": finite expected");
    }
    if (!(expandedUncertainty > 0) || Double.isInfinite(expandedUncertainty)) {
      throw new IllegalArgumentException(
          "expandedUncertainty " + expandedUncertainty + ": finite and above 0 expected");
    }
    if (digits < 1 || digits > 2) {
      throw new IllegalArgumentException("digits " + digits + ": 1 or 2 expected");
    }
    BigDecimal exact = BigDecimal.valueOf(expandedUncertainty);
    BigDecimal rounded = exact.round(new MathContext(digits, RoundingMode.HALF_UP));
    if (rounded.compareTo(exact.multiply(SMALLEST_SHARE)) < 0) {
      rounded = exact.round(new MathContext(digits, RoundingMode.UP));
    }
    // A carry (9.96 to 10) or a short double (3.0) leaves other than the wanted digits.
    int scale = rounded.scale() - rounded.precision() + digits;
    BigDecimal placed = rounded.setScale(scale, RoundingMode.UNNECESSARY);
    return new UncertaintyRounding(
        BigDecimal.valueOf(value).setScale(scale, RoundingMode.HALF_EVEN), placed);
  }

  /**
   * The value with a decimal point.
   *
   * @return plain digits; with a power of ten only from 1e15 up or where the last place is below
   *     1e-15
   */
  public String valueText() {
    return text(value);
  }

  /**
   * The value in a language's digits and decimal mark, without grouping.
   *
   * @param locale the language
   * @return as {@link #valueText()}
   */
  public String valueText(Locale locale) {
    return localised(valueText(), locale);
  }

  /**
   * The expanded uncertainty with a decimal point.
   *
   * @return as {@link #valueText()}
   */
  public String uncertaintyText() {
    return text(expandedUncertainty);
  }

  /**
   * The expanded uncertainty in a language's digits and decimal mark, without grouping.
   *
   * @param locale the language
   * @return as {@link #valueText()}
   */
  public String uncertaintyText(Locale locale) {
    return localised(uncertaintyText(), locale);
  }

  private String text(BigDecimal number) {
    double largest = Math.max(value.abs().doubleValue(), expandedUncertainty.doubleValue());
    boolean plain = largest < PLAIN_BELOW && expandedUncertainty.doubleValue() > PLAIN_ABOVE;
    return plain ? number.toPlainString() : number.toString();
  }

  private static String localised(String text, Locale locale) {
    DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(locale);
    StringBuilder shown = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char character = text.charAt(i);
      if (character == '.') {
        shown.append(symbols.getDecimalSeparator());
      } else if (character >= '0' && character <= '9') {
        shown.append((char) (symbols.getZeroDigit() + (character - '0')));
      } else {
        shown.append(character);
      }
    }
    return shown.toString();
  }
}
