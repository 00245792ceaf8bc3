package fettle.statistics;

import java.util.Arrays;

/**
 * Quartiles and fences of the box plot.
 *
 * <p>Quartiles at positions 0.25(n + 1) and 0.75(n + 1) of the ordered values, with linear
 * interpolation. Beyond an inner fence a value is a mild outlier, beyond an outer fence an extreme
 * one.
 *
 * @param lowerQuartile Q1
 * @param upperQuartile Q3
 * @see "NIST/SEMATECH e-Handbook of Statistical Methods, 7.1.6"
 * @see "J. W. Tukey, Exploratory Data Analysis (1977)"
 */
public record BoxplotFences(double lowerQuartile, double upperQuartile) {
  /**
   * From values.
   *
   * @param values at least 3 finite values
   * @return quartiles and fences
   */
  public static BoxplotFences of(double[] values) {
    Arguments.atLeast("values", values.length, 3, "a box plot");
    Arguments.finite("values", values);
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return new BoxplotFences(
        OrderStatistics.interpolated(sorted, 0.25), OrderStatistics.interpolated(sorted, 0.75));
  }

  /**
   * Interquartile range.
   *
   * @return Q3 − Q1
   */
  public double interquartileRange() {
    return upperQuartile - lowerQuartile;
  }

  /**
   * Lower inner fence.
   *
   * @return Q1 − 1.5 interquartile ranges
   */
  public double lowerInner() {
    return lowerQuartile - 1.5 * interquartileRange();
  }

  /**
   * Upper inner fence.
   *
   * @return Q3 + 1.5 interquartile ranges
   */
  public double upperInner() {
    return upperQuartile + 1.5 * interquartileRange();
  }

  /**
   * Lower outer fence.
   *
   * @return Q1 − 3 interquartile ranges
   */
  public double lowerOuter() {
    return lowerQuartile - 3 * interquartileRange();
  }

  /**
   * Upper outer fence.
   *
   * @return Q3 + 3 interquartile ranges
   */
  public double upperOuter() {
    return upperQuartile + 3 * interquartileRange();
  }
}
