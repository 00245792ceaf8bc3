package fettle.statistics;

import java.util.stream.IntStream;

/**
 * Tabular cumulative sums.
 *
 * <pre>
 *   high_i = max(0, high_{i−1} + x_i − target − allowance)
 *   low_i  = max(0, low_{i−1} + target − allowance − x_i)      signal above the decision interval
 * </pre>
 *
 * @param target in-control mean
 * @param allowance k in the unit of the values, usually half the shift to be found
 * @param decision h in the unit of the values, above zero
 * @see "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3"
 * @see "E. S. Page, Continuous inspection schemes, Biometrika 41 (1954) 100"
 */
public record CusumChart(double target, double allowance, double decision) {
  /**
   * Checks the settings.
   *
   * @param target in-control mean
   * @param allowance k
   * @param decision h
   */
  public CusumChart {
    Arguments.finite("target", target);
    Arguments.notNegative("allowance", allowance);
    Arguments.positive("decision", decision);
  }

  /**
   * Upper sums.
   *
   * @param values finite values in their order
   * @return one for each value
   */
  public double[] high(double[] values) {
    return sums(values, 1);
  }

  /**
   * Lower sums.
   *
   * @param values finite values in their order
   * @return one for each value, not negative
   */
  public double[] low(double[] values) {
    return sums(values, -1);
  }

  private double[] sums(double[] values, double sign) {
    Arguments.finite("values", values);
    double[] sums = new double[values.length];
    double last = 0;
    for (int i = 0; i < values.length; i++) {
      last = Math.max(0, last + sign * (values[i] - target) - allowance);
      sums[i] = last;
    }
    return sums;
  }

  /**
   * Plain sums of the deviations from the target, for the picture.
   *
   * @param values finite values in their order
   * @return one for each value
   */
  public double[] plain(double[] values) {
    Arguments.finite("values", values);
    double[] sums = new double[values.length];
    double last = 0;
    for (int i = 0; i < values.length; i++) {
      last += values[i] - target;
      sums[i] = last;
    }
    return sums;
  }

  /**
   * Where sums signal.
   *
   * @param sums upper or lower sums
   * @return indices of those above the decision interval
   */
  public int[] signals(double[] sums) {
    return IntStream.range(0, sums.length).filter(i -> sums[i] > decision).toArray();
  }

  /**
   * Average run length of both sides together until a signal, from sums of 0 on.
   *
   * @param shift true mean less target, in the unit of the values
   * @param standardDeviation σ of one value, above zero
   * @return expected number of values
   */
  public double averageRunLength(double shift, double standardDeviation) {
    Arguments.positive("standardDeviation", standardDeviation);
    return AverageRunLength.cusum(
        allowance / standardDeviation, decision / standardDeviation, shift / standardDeviation);
  }
}
