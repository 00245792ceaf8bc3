package fettle.table;

/**
 * Decimal numbers: optional sign, digits with at most one decimal mark, optional power of ten.
 *
 * <p>No NaN, no infinity, no hexadecimal form, no grouping, no type suffix. A number of at most 2⁵³
 * whose power of ten is within ±22 is one exact product or quotient, correctly rounded (W. D.
 * Clinger, How to read floating point numbers accurately, PLDI 1990); any other goes to {@link
 * Double#parseDouble}. Either way the result is the double nearest to the text.
 */
final class DecimalParser {
  private static final long LARGEST_EXACT = 1L << 53;
  private static final int MOST_DIGITS = 18;
  private static final int LARGEST_POWER = 22;
  private static final int EXPONENT_CEILING = 100_000;
  private static final double[] POWERS = new double[LARGEST_POWER + 1];

  static {
    for (int i = 0; i <= LARGEST_POWER; i++) {
      POWERS[i] = Double.parseDouble("1e" + i);
    }
  }

  private DecimalParser() {}

  /**
   * Nearest double of a trimmed text; NaN if it is not a number as described; infinite if it is one
   * beyond the range of double.
   */
  static double parse(String text, DecimalMark mark) {
    boolean point = mark.allowsPoint();
    boolean comma = mark.allowsComma();
    int length = text.length();
    int at = 0;
    boolean negative = false;
    if (length > 0 && (text.charAt(0) == '-' || text.charAt(0) == '+')) {
      negative = text.charAt(0) == '-';
      at = 1;
    }
    long digits = 0;
    int taken = 0;
    int seen = 0;
    int power = 0;
    boolean marked = false;
    for (; at < length; at++) {
      char character = text.charAt(at);
      if (character >= '0' && character <= '9') {
        seen++;
        if (taken < MOST_DIGITS) {
          digits = digits * 10 + (character - '0');
          taken += digits == 0 ? 0 : 1;
          power -= marked ? 1 : 0;
        } else {
          taken++;
        }
      } else if (!marked && (character == '.' && point || character == ',' && comma)) {
        marked = true;
      } else {
        break;
      }
    }
    if (seen == 0) {
      return Double.NaN;
    }
    if (at < length) {
      int exponent = exponent(text, at);
      if (exponent == Integer.MIN_VALUE) {
        return Double.NaN;
      }
      power += exponent;
    }
    if (taken <= MOST_DIGITS && digits <= LARGEST_EXACT && Math.abs(power) <= LARGEST_POWER) {
      double value = power < 0 ? digits / POWERS[-power] : digits * POWERS[power];
      return negative ? -value : value;
    }
    return Double.parseDouble(withPoint(text));
  }

  /** The power after e or E, cut at ±100,000; {@code Integer.MIN_VALUE} if there is none. */
  private static int exponent(String text, int from) {
    int at = from;
    int length = text.length();
    if (text.charAt(at) != 'e' && text.charAt(at) != 'E') {
      return Integer.MIN_VALUE;
    }
    at++;
    boolean negative = at < length && text.charAt(at) == '-';
    if (at < length && (negative || text.charAt(at) == '+')) {
      at++;
    }
    if (at == length) {
      return Integer.MIN_VALUE;
    }
    int exponent = 0;
    for (; at < length; at++) {
      int digit = text.charAt(at) - '0';
      if (digit < 0 || digit > 9) {
        return Integer.MIN_VALUE;
      }
      exponent = Math.min(exponent * 10 + digit, EXPONENT_CEILING);
    }
    return negative ? -exponent : exponent;
  }

  /** Whether a number that came out as 0 has a digit other than 0 before its power of ten. */
  static boolean hasUnderflown(String text) {
    for (int i = 0; i < text.length(); i++) {
      char character = text.charAt(i);
      if (character >= '1' && character <= '9') {
        return true;
      }
      if (character == 'e' || character == 'E') {
        return false;
      }
    }
    return false;
  }

  static String withPoint(String text) {
    return text.indexOf(',') < 0 ? text : text.replace(',', '.');
  }
}
