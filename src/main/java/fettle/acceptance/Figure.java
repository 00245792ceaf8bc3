package fettle.acceptance;

import java.math.BigDecimal;
import java.math.MathContext;

/** A number written for a reader: a few significant digits, no grouping. */
final class Figure {
  private static final String RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";
  private static final double PLAIN_FROM = 1e-4;
  private static final double PLAIN_BELOW = 1e7;

  private Figure() {}

  /** A stated number: at most so many digits, none of them a trailing zero after the point. */
  static String of(double value, int digits) {
    return text(value, digits, true);
  }

  /** A measured number: so many significant digits, zeros among them. */
  static String measured(double value, int digits) {
    return text(value, digits, false);
  }

  private static String text(double value, int digits, boolean stripped) {
    if (!Double.isFinite(value)) {
      return Double.isNaN(value) ? "not a number" : value > 0 ? "infinite" : "minus infinite";
    }
    if (value == 0) {
      return "0";
    }
    double size = Math.abs(value);
    int power = 0;
    BigDecimal number = BigDecimal.valueOf(size);
    if (size < PLAIN_FROM || size >= PLAIN_BELOW) {
      power = number.precision() - number.scale() - 1;
      number = number.scaleByPowerOfTen(-power);
    }
    // Digits before the point are never cut.
    int whole = number.precision() - number.scale();
    BigDecimal rounded = number.round(new MathContext(Math.max(digits, Math.max(1, whole))));
    if (stripped) {
      rounded = rounded.stripTrailingZeros();
    } else {
      int scale = rounded.scale() - rounded.precision() + digits;
      rounded = rounded.setScale(Math.max(0, scale), java.math.RoundingMode.HALF_EVEN);
    }
    BigDecimal plain = rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    return (value < 0 ? "−" : "")
        + plain.toPlainString()
        + (power == 0 ? "" : "·10" + raised(power));
  }

  private static String raised(int power) {
    StringBuilder text = new StringBuilder(power < 0 ? "⁻" : "");
    for (char digit : Integer.toString(Math.abs(power)).toCharArray()) {
      text.append(RAISED.charAt(digit - '0'));
    }
    return text.toString();
  }

  /** A count with its noun. */
  static String count(long n, String one, String several) {
    return n + " " + (n == 1 ? one : several);
  }
}
