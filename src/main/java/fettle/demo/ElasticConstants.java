package fettle.demo;

/**
 * Elastic constants of an isotropic body.
 *
 * @param modulusGpa Young's modulus E in GPa, above 0
 * @param poissonRatio Poisson ratio ν, above −1 and at most 0.5
 */
public record ElasticConstants(double modulusGpa, double poissonRatio) {

  /**
   * Diamond, 1141 GPa and 0.07, as used with instrumented indentation.
   *
   * @see "W. C. Oliver, G. M. Pharr, J. Mater. Res. 7 (1992) 1564; ISO 14577-1 (from memory)"
   */
  public static final ElasticConstants DIAMOND = new ElasticConstants(1141, 0.07);

  /** Tungsten carbide with cobalt, 600 GPa and 0.22: handbook values, from memory. */
  public static final ElasticConstants TUNGSTEN_CARBIDE = new ElasticConstants(600, 0.22);

  /** Low-alloy steel, 210 GPa and 0.30: handbook values, from memory. */
  public static final ElasticConstants STEEL = new ElasticConstants(210, 0.30);

  /** Checks values. */
  public ElasticConstants {
    if (!(modulusGpa > 0) || Double.isInfinite(modulusGpa)) {
      throw new IllegalArgumentException(
          "modulusGpa " + modulusGpa + ": finite and above 0 expected");
    }
    if (!(poissonRatio > -1 && poissonRatio <= 0.5)) {
      throw new IllegalArgumentException(
          "poissonRatio " + poissonRatio + ": above -1 and at most 0.5 expected");
    }
  }

  /**
   * Plane-strain modulus E / (1 − ν²).
   *
   * @return in GPa
   */
  public double planeStrainModulusGpa() {
    return modulusGpa / (1 - poissonRatio * poissonRatio);
  }

  /**
   * Reduced modulus of the contact of two bodies,
   *
   * <pre>  1/E_r = (1 − ν₁²)/E₁ + (1 − ν₂²)/E₂.</pre>
   *
   * @param other the other body
   * @return E_r in GPa
   */
  public double reducedModulusGpa(ElasticConstants other) {
    return 1 / (1 / planeStrainModulusGpa() + 1 / other.planeStrainModulusGpa());
  }

  /**
   * The same body with another Young's modulus.
   *
   * @param factor what E is multiplied by, above 0
   * @return a copy
   */
  ElasticConstants scaled(double factor) {
    return new ElasticConstants(modulusGpa * factor, poissonRatio);
  }
}
