package fettle.demo;

/**
 * The rod of a UCI probe: a slender bar in longitudinal resonance with a Vickers diamond at one
 * end, free at the other, one-dimensional and without damping.
 *
 * <p>Pressed on a specimen, the diamond acts as a spring of stiffness k at the end of the rod. With
 * n the number of the mode, L and A length and cross-section, E_rod and ρ modulus and density,
 *
 * <pre>
 *   f₀ = n / (2 L) · √(E_rod / ρ)                    free rod
 *   (nπ + δ) · tan δ = k L / (E_rod A)               rod in contact, 0 &lt; δ &lt; π/2
 *   Δf = f₀ · δ / (nπ)                               shift, positive
 *   k  = β · 2 E_r · √(A_p / π),  β = 1.012          stiffness of the contact
 *   A_p = d² / 2,  d² = 0.1891 F / HV                projected area (mm²) under the force F (N)
 * </pre>
 *
 * E_r is the reduced modulus of diamond and specimen. The modulus, the force and the hardness enter
 * through the one group F E_r² / HV, so that at equal shift and force
 *
 * <pre>  HV₁ / HV₂ = (E_r,1 / E_r,2)²</pre>
 *
 * exactly. Real probes are stepped, clamped and driven, and real contacts pile up or sink in; a
 * factor on A_p stands for the latter.
 *
 * @param lengthMm length L in mm
 * @param diameterMm diameter in mm
 * @param mode number n of the longitudinal mode
 * @param modulusGpa E_rod in GPa
 * @param densityKgPerM3 ρ in kg/m³
 * @see "C. Kleesattel, G. M. L. Gladwell, The contact-impedance meter, Ultrasonics 6 (1968) 175
 *     (from memory): resonance shift and contact area"
 * @see "G. M. Pharr, W. C. Oliver, F. R. Brotzen, J. Mater. Res. 7 (1992) 613: stiffness of a
 *     contact; β of the square pyramid from memory"
 * @see "ISO 6507-1 (from memory): HV = 0.1891 F / d²"
 */
public record UciRod(
    double lengthMm, double diameterMm, int mode, double modulusGpa, double densityKgPerM3) {
  private static final double SQUARE_PYRAMID = 1.012;
  private static final double VICKERS = 0.1891;
  private static final int MAX_ITERATIONS = 100;

  /** Change of δ, relative to δ, at which the iteration stops. */
  private static final double TOLERANCE = 2e-16;

  /** Checks values. */
  public UciRod {
    requirePositive("lengthMm", lengthMm);
    requirePositive("diameterMm", diameterMm);
    requirePositive("mode", mode);
    requirePositive("modulusGpa", modulusGpa);
    requirePositive("densityKgPerM3", densityKgPerM3);
  }

  private static void requirePositive(String name, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(name + " " + value + ": finite and above 0 expected");
    }
  }

  /**
   * Frequency of the free rod.
   *
   * @return f₀ in Hz
   */
  public double freeFrequencyHz() {
    return mode * StrictMath.sqrt(modulusGpa * 1e9 / densityKgPerM3) / (2 * lengthMm * 1e-3);
  }

  /**
   * Shift of the resonance on contact.
   *
   * @param hardness Vickers hardness HV, above 0
   * @param forceNewtons test force F in N, above 0
   * @param specimen elastic constants of the specimen
   * @param areaFactor true contact area over d²/2, above 0: above 1 for pile-up, below for sink-in
   * @return Δf in Hz
   */
  public double shiftHz(
      double hardness, double forceNewtons, ElasticConstants specimen, double areaFactor) {
    requirePositive("hardness", hardness);
    requirePositive("forceNewtons", forceNewtons);
    requirePositive("areaFactor", areaFactor);
    double areaMm2 = areaFactor * VICKERS * forceNewtons / (2 * hardness);
    double reduced = specimen.reducedModulusGpa(ElasticConstants.DIAMOND);
    double stiffness = SQUARE_PYRAMID * 2 * reduced * StrictMath.sqrt(areaMm2 / StrictMath.PI);
    double phase = phase(stiffness * lengthMm / (modulusGpa * crossSectionMm2()));
    return freeFrequencyHz() * phase / (mode * StrictMath.PI);
  }

  /**
   * Hardness that gives a shift: the inverse of {@link #shiftHz} in closed form.
   *
   * @param shiftHz Δf in Hz, above 0 and below f₀/(2n), the limit of a rigid contact
   * @param forceNewtons test force F in N, above 0
   * @param specimen elastic constants of the specimen
   * @param areaFactor true contact area over d²/2, above 0
   * @return Vickers hardness HV
   */
  public double hardness(
      double shiftHz, double forceNewtons, ElasticConstants specimen, double areaFactor) {
    requirePositive("forceNewtons", forceNewtons);
    requirePositive("areaFactor", areaFactor);
    double limit = freeFrequencyHz() / (2 * mode);
    if (!(shiftHz > 0 && shiftHz < limit)) {
      throw new IllegalArgumentException(
          "shiftHz " + shiftHz + ": above 0 and below " + limit + " expected");
    }
    double phase = mode * StrictMath.PI * shiftHz / freeFrequencyHz();
    double load = (mode * StrictMath.PI + phase) * StrictMath.tan(phase);
    double stiffness = load * modulusGpa * crossSectionMm2() / lengthMm;
    double reduced = specimen.reducedModulusGpa(ElasticConstants.DIAMOND);
    double radius = stiffness / (SQUARE_PYRAMID * 2 * reduced);
    return areaFactor * VICKERS * forceNewtons / (2 * StrictMath.PI * radius * radius);
  }

  private double crossSectionMm2() {
    return StrictMath.PI * diameterMm * diameterMm / 4;
  }

  /**
   * The root δ of (nπ + δ) tan δ = load in (0, π/2), by Newton's method on (nπ + δ) sin δ − load
   * cos δ, which rises from −load to nπ + π/2; a step out of the bracket is replaced by a
   * bisection.
   */
  private double phase(double load) {
    double low = 0;
    double high = StrictMath.PI / 2;
    double phase = StrictMath.atan(load / (mode * StrictMath.PI));
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      double sine = StrictMath.sin(phase);
      double cosine = StrictMath.cos(phase);
      double turn = mode * StrictMath.PI + phase;
      double value = turn * sine - load * cosine;
      if (value > 0) {
        high = phase;
      } else {
        low = phase;
      }
      double next = phase - value / (sine + turn * cosine + load * sine);
      if (!(next >= low && next <= high)) {
        next = (low + high) / 2;
      }
      if (StrictMath.abs(next - phase) <= TOLERANCE * phase) {
        return next;
      }
      phase = next;
    }
    // Rounding may make the last bits alternate; the bracket then holds the root to a few ulp.
    return phase;
  }
}
