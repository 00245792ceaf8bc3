package fettle.selfcheck;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;

/**
 * One published value and what this machine makes of it.
 *
 * @param quantity what it is
 * @param printed the value as its source prints it
 * @param within largest difference from it that is chance, for values of a simulation; empty where
 *     the value must round to the printed digits
 * @param got what was computed
 */
public record CheckedValue(String quantity, String printed, Optional<String> within, double got) {

  /**
   * Whether the value is met: within chance, or rounding to the printed digits.
   *
   * @return true if it is
   */
  public boolean passed() {
    if (!Double.isFinite(got)) {
      return false;
    }
    BigDecimal expected = new BigDecimal(printed);
    BigDecimal off = new BigDecimal(got).subtract(expected).abs();
    if (within.isPresent()) {
      return off.compareTo(new BigDecimal(within.get())) <= 0;
    }
    // Half a unit of the last digit; where a tie was rounded, double precision may lie beside it.
    double allowed = 0.5 * expected.ulp().doubleValue() + 4 * Math.ulp(expected.doubleValue());
    return off.doubleValue() <= allowed;
  }

  /**
   * Correct significant digits: −lg of the relative difference, at most as many as are printed.
   *
   * @return 0 or more
   */
  public double digits() {
    BigDecimal expected = new BigDecimal(printed);
    int most = expected.signum() == 0 ? expected.scale() : expected.precision();
    if (!Double.isFinite(got)) {
      return 0;
    }
    BigDecimal off = new BigDecimal(got).subtract(expected).abs();
    if (off.signum() == 0) {
      return most;
    }
    BigDecimal size = expected.signum() == 0 ? BigDecimal.ONE : expected.abs();
    double digits = -StrictMath.log10(off.divide(size, MathContext.DECIMAL64).doubleValue());
    return Math.max(0, Math.min(most, digits));
  }
}
