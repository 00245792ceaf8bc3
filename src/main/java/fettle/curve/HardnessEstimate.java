package fettle.curve;

/**
 * A hardness with its uncertainty.
 *
 * @param hardness in the scale's unit
 * @param standardUncertainty in the scale's unit
 * @param expandedUncertainty half-width of the 95 % interval, in the scale's unit
 */
public record HardnessEstimate(
    double hardness, double standardUncertainty, double expandedUncertainty) {
  /**
   * Coverage factor k = U / u: above 1.96 by as much as the variances behind u are poorly known.
   *
   * @return k
   */
  public double coverageFactor() {
    return standardUncertainty == 0 ? 1.959963984540054 : expandedUncertainty / standardUncertainty;
  }
}
