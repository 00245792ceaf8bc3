package fettle.reference;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Number of correct significant digits of a computed number: −lg(|x − c| / |c|), the log relative
 * error by which NIST's reference datasets are scored, with the difference taken in decimals so
 * that the comparison itself rounds nothing.
 *
 * @see "B. D. McCullough, Assessing the reliability of statistical software, Am. Stat. 52 (1998)
 *     358"
 */
public final class CorrectDigits {
  /** Agreement in every digit that is compared. */
  public static final double ALL = 99;

  private CorrectDigits() {}

  /** Digits of x against a decimal; of a reference 0 the digits after the point, −lg|x|. */
  public static double of(double x, BigDecimal reference) {
    BigDecimal error = new BigDecimal(x).subtract(reference).abs();
    if (error.signum() == 0) {
      return ALL;
    }
    BigDecimal size = reference.signum() == 0 ? BigDecimal.ONE : reference.abs();
    return -Math.log10(error.divide(size, MathContext.DECIMAL64).doubleValue());
  }

  /** Digits against an expected number of a reference case: the recomputed value where given. */
  public static double of(double x, JsonNode expected) {
    if (!expected.isObject()) {
      return of(x, new BigDecimal(expected.asText()));
    }
    return of(
        x,
        new BigDecimal(
            expected.has("recomputed")
                ? expected.get("recomputed").textValue()
                : expected.get("value").asText()));
  }

  /** Asserts a number of digits, naming the quantity and what was reached. */
  public static void atLeast(double digits, double x, JsonNode expected, String what) {
    double reached = of(x, expected);
    assertTrue(
        reached >= digits,
        () -> what + ": " + x + " against " + expected + " stands to " + reached + " digits");
  }

  /** Asserts that x rounds to the source's printed text, where the source is known to be right. */
  public static void roundsToPrinted(double x, JsonNode expected, String what) {
    if (!expected.has("printed") || !expected.path("rounds_to_printed").asBoolean(true)) {
      return;
    }
    BigDecimal printed = new BigDecimal(expected.get("printed").textValue());
    // Half a unit of the last printed digit, and one part in 1e12 of it for a tie.
    double unit = printed.ulp().doubleValue();
    double off = new BigDecimal(x).subtract(printed).abs().doubleValue();
    assertTrue(
        off <= 0.5 * unit * (1 + 1e-12) + 1e-12 * Math.abs(x),
        () -> what + ": " + x + " does not round to the printed " + printed.toPlainString());
  }
}
