package fettle.acceptance;

import java.math.BigDecimal;
import java.math.MathContext;

/** A number written for a reader: a few significant digits, no power of ten, no grouping. */
final class Figure {
  private Figure() {}

  /** A number with so many significant digits; digits before the point are never cut. */
  static String of(double value, int digits) {
    if (!Double.isFinite(value)) {
      return Double.isNaN(value) ? "not a number" : value > 0 ? "infinite" : "minus infinite";
    }
    BigDecimal exact = BigDecimal.valueOf(value);
    int whole = exact.precision() - exact.scale();
    BigDecimal rounded = exact.round(new MathContext(Math.max(digits, Math.max(1, whole))));
    if (rounded.signum() == 0) {
      return "0";
    }
    BigDecimal plain = rounded.stripTrailingZeros();
    return (plain.scale() < 0 ? plain.setScale(0) : plain).toPlainString();
  }

  /** A count with its noun. */
  static String count(long n, String one, String several) {
    return n + " " + (n == 1 ? one : several);
  }
}
