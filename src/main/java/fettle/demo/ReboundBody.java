package fettle.demo;

/**
 * The impact body of a rebound device: a sphere that indents plastically and is thrown back
 * elastically.
 *
 * <p>Fully plastic impact gives the coefficient of restitution
 *
 * <pre>
 *   e = 3.8 · (Y / E*)^(1/2) · (½ m V² / (Y R³))^(−1/8),   Y = H / 3
 * </pre>
 *
 * with E* from specimen and ball, m and V mass and speed of the body, R radius of the ball, and H
 * the hardness as a pressure: 9.80665 MPa for each unit of HV or HBW. The law overshoots where part
 * of the contact stays elastic (above e ≈ 0.65), and a real rebound stays below one. The demo bends
 * it smoothly towards a ceiling c = 0.9 by
 *
 * <pre>
 *   e' = e · (1 + (e / c)^p)^(−1/p),   p = 3
 * </pre>
 *
 * which is this project's own choice, not a published law: at the soft end e' → e and H ∝ e'^1.6,
 * towards the hard end the exponent rises. The response is 1000 e'.
 *
 * @param massG mass m in g
 * @param speedMPerS impact speed V in m/s
 * @param radiusMm radius R of the ball in mm
 * @param ball elastic constants of the ball
 * @see "K. L. Johnson, Contact Mechanics, Cambridge University Press 1985, section 11.5 (from
 *     memory)"
 */
public record ReboundBody(double massG, double speedMPerS, double radiusMm, ElasticConstants ball) {

  /** An impact body of type D: figures of ISO 16859-1, from memory. */
  public static final ReboundBody TYPE_D =
      new ReboundBody(5.45, 2.05, 1.5, ElasticConstants.TUNGSTEN_CARBIDE);

  private static final double PLASTIC = 3.8;
  private static final double CEILING = 0.9;
  private static final double SHARPNESS = 3;
  private static final double PASCAL_PER_UNIT = 9.80665e6;

  /** Checks values. */
  public ReboundBody {
    requirePositive("massG", massG);
    requirePositive("speedMPerS", speedMPerS);
    requirePositive("radiusMm", radiusMm);
  }

  private static void requirePositive(String name, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(name + " " + value + ": finite and above 0 expected");
    }
  }

  /**
   * Coefficient of restitution of the fully plastic law, before the bend.
   *
   * @param hardness hardness in units of HV or HBW, above 0
   * @param specimen elastic constants of the specimen
   * @return e, dimension one
   */
  public double plasticRestitution(double hardness, ElasticConstants specimen) {
    requirePositive("hardness", hardness);
    return restitutionAtOneUnit(specimen) * StrictMath.pow(hardness, 0.625);
  }

  /**
   * Rebound ratio × 1000.
   *
   * @param hardness hardness in units of HV or HBW, above 0
   * @param specimen elastic constants of the specimen
   * @return response, dimension one
   */
  public double response(double hardness, ElasticConstants specimen) {
    double plastic = plasticRestitution(hardness, specimen);
    double bend = 1 + StrictMath.pow(plastic / CEILING, SHARPNESS);
    return 1000 * plastic * StrictMath.pow(bend, -1 / SHARPNESS);
  }

  /**
   * Hardness that gives a response: the inverse of {@link #response} in closed form.
   *
   * @param response rebound ratio × 1000, above 0 and below 900
   * @param specimen elastic constants of the specimen
   * @return hardness in units of HV or HBW
   */
  public double hardness(double response, ElasticConstants specimen) {
    double bent = response / 1000;
    if (!(bent > 0 && bent < CEILING)) {
      throw new IllegalArgumentException(
          "response " + response + ": above 0 and below " + 1000 * CEILING + " expected");
    }
    double bend = 1 - StrictMath.pow(bent / CEILING, SHARPNESS);
    double plastic = bent * StrictMath.pow(bend, -1 / SHARPNESS);
    return StrictMath.pow(plastic / restitutionAtOneUnit(specimen), 1.6);
  }

  /** e is a constant times H^(5/8); this is the constant. */
  private double restitutionAtOneUnit(ElasticConstants specimen) {
    double yield = PASCAL_PER_UNIT / 3;
    double reduced = specimen.reducedModulusGpa(ball) * 1e9;
    double energy = 0.5 * massG * 1e-3 * speedMPerS * speedMPerS;
    double radius = radiusMm * 1e-3;
    return PLASTIC
        * StrictMath.sqrt(yield / reduced)
        * StrictMath.pow(energy / (yield * radius * radius * radius), -0.125);
  }
}
