package fettle.statistics;

import org.apache.commons.numbers.core.DD;

/**
 * The decimal number that was written down, from the double it was read into.
 *
 * <p>1000000.2 is not a double: the nearest one is off by 4.7e-11, which after subtracting a mean
 * of 1000000.2 is all that is left to see. The decimal with fewest places that reads back to the
 * same double is taken as what was meant; double and remainder together hold it to 32 digits. A
 * value that no decimal of up to 22 places and below 2^53 units explains is taken as it is. Either
 * way the value moves by less than half a unit of its last bit.
 */
final class PrintedDecimal {
  private static final double LARGEST_EXACT = 0x1p53;
  private static final double[] POWERS = new double[23];

  static {
    double power = 1;
    for (int i = 0; i < POWERS.length; i++) {
      POWERS[i] = power;
      power *= 10; // exact up to 10^22
    }
  }

  private PrintedDecimal() {}

  static DD of(double x) {
    for (double power : POWERS) {
      double units = Math.rint(x * power);
      if (Math.abs(units) >= LARGEST_EXACT) {
        break;
      }
      if (units / power == x) {
        // the remainder of a correctly rounded quotient is exact in one fused operation
        return DD.ofSum(x, -Math.fma(x, power, -units) / power);
      }
    }
    return DD.of(x);
  }

  static DD[] of(double[] values) {
    DD[] decimals = new DD[values.length];
    for (int i = 0; i < values.length; i++) {
      decimals[i] = of(values[i]);
    }
    return decimals;
  }

  static DD sum(DD[] values) {
    DD sum = DD.ZERO;
    for (DD value : values) {
      sum = sum.add(value);
    }
    return sum;
  }
}
