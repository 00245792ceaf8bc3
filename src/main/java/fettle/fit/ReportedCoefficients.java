package fettle.fit;

import java.util.List;

/**
 * Coefficients in the raw response's units, as they are printed and exported.
 *
 * @param names one name a coefficient
 * @param values their values
 * @param covariance their covariance, row-major
 */
public record ReportedCoefficients(List<String> names, double[] values, double[] covariance) {
  /** Copies. */
  public ReportedCoefficients {
    names = List.copyOf(names);
    values = values.clone();
    covariance = covariance.clone();
  }

  /**
   * Values.
   *
   * @return a copy
   */
  @Override
  public double[] values() {
    return values.clone();
  }

  /**
   * Covariance.
   *
   * @return a copy, row-major
   */
  @Override
  public double[] covariance() {
    return covariance.clone();
  }

  /**
   * Standard uncertainty of one coefficient.
   *
   * @param k index
   * @return square root of its variance
   */
  public double standardUncertainty(int k) {
    return Math.sqrt(covariance[k * values.length + k]);
  }
}
