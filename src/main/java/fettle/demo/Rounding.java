package fettle.demo;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Rounding of shown values to a decimal step, exact in decimal so that files show no tail. */
final class Rounding {
  private Rounding() {}

  /**
   * The nearest multiple of a step.
   *
   * @param step a power of ten, at most 1
   * @param value finite
   */
  static double to(double step, double value) {
    int digits = BigDecimal.valueOf(step).stripTrailingZeros().scale();
    return new BigDecimal(value).setScale(digits, RoundingMode.HALF_EVEN).doubleValue();
  }
}
