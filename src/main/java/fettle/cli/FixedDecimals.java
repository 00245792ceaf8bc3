package fettle.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers with a fixed number of decimals, correctly rounded, ties to even. */
final class FixedDecimals {
  private final int digits;
  private final double scale;
  private final long unit;

  /**
   * A format.
   *
   * @param digits number of decimals, 0 to 12
   */
  FixedDecimals(int digits) {
    if (digits < 0 || digits > 12) {
      throw new IllegalArgumentException("digits " + digits + ": 0 to 12 expected");
    }
    this.digits = digits;
    long power = 1;
    for (int k = 0; k < digits; k++) {
      power *= 10;
    }
    this.unit = power;
    this.scale = power;
  }

  String text(double value, boolean comma) {
    double scaled = value * scale;
    double whole = Math.rint(scaled);
    // Near a tie the product's rounding could decide; there the exact decimal does.
    if (Math.abs(scaled) > 1e12 || Math.abs(Math.abs(scaled - whole) - 0.5) < 1e-3) {
      String text = new BigDecimal(value).setScale(digits, RoundingMode.HALF_EVEN).toPlainString();
      return comma ? text.replace('.', ',') : text;
    }
    long units = (long) Math.abs(whole);
    StringBuilder text = new StringBuilder(20);
    if (whole < 0) {
      text.append('-');
    }
    text.append(units / unit);
    if (digits > 0) {
      text.append(comma ? ',' : '.');
      String fraction = Long.toString(units % unit);
      for (int k = fraction.length(); k < digits; k++) {
        text.append('0');
      }
      text.append(fraction);
    }
    return text.toString();
  }
}
