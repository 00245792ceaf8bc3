package fettle.statistics;

import java.util.stream.IntStream;

/**
 * Centre line and limits of a control chart.
 *
 * @param lower lower limit
 * @param centre centre line
 * @param upper upper limit
 */
public record ControlLimits(double lower, double centre, double upper) {
  /**
   * Whether a value is in control.
   *
   * @param value a charted value
   * @return true on or between the limits
   */
  public boolean hold(double value) {
    return value >= lower && value <= upper;
  }

  /**
   * Places of the values out of control.
   *
   * @param values charted values
   * @return their indices, rising
   */
  public int[] outside(double[] values) {
    return IntStream.range(0, values.length).filter(i -> !hold(values[i])).toArray();
  }
}
