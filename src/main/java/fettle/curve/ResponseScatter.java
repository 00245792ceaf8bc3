package fettle.curve;

/**
 * Scatter of single readings and the other influences on the response of a result.
 *
 * @param relative whether repeatability is a fraction of the response
 * @param repeatability pooled standard deviation of one reading, relative or in the response unit
 * @param degreesOfFreedom of the pooled standard deviation
 * @param resolution smallest step of the displayed response, in the response unit; 0 where unknown
 * @param operator relative Type B standard uncertainty of another operator, 0 where absent
 * @param drift relative Type B standard uncertainty of the probe's drift, 0 where absent
 * @param temperature relative Type B standard uncertainty from temperature, 0 where absent
 */
public record ResponseScatter(
    boolean relative,
    double repeatability,
    double degreesOfFreedom,
    double resolution,
    double operator,
    double drift,
    double temperature) {

  /**
   * Pooled standard deviation of one reading at a response.
   *
   * @param response in the response unit
   * @return in the response unit
   */
  public double repeatabilityAt(double response) {
    return relative ? repeatability * Math.abs(response) : repeatability;
  }
}
