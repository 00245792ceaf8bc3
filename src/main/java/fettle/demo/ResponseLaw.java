package fettle.demo;

/**
 * How an instrument answers a specimen, without any chance.
 *
 * <p>The contact factor stands for what the moduli do not tell: for UCI the true contact area over
 * d²/2 (pile-up, sink-in), for rebound the dynamic over the static hardness (rate sensitivity).
 */
sealed interface ResponseLaw {

  /** Response of a specimen of that hardness, in the response's unit. */
  double response(double hardness, ElasticConstants specimen, double contactFactor);

  /** Hardness that gives the response: the inverse of {@link #response}. */
  double hardness(double response, ElasticConstants specimen, double contactFactor);

  /**
   * A UCI probe with a rod and a test force.
   *
   * @param rod the rod
   * @param forceNewtons test force in N
   */
  record Uci(UciRod rod, double forceNewtons) implements ResponseLaw {
    @Override
    public double response(double hardness, ElasticConstants specimen, double contactFactor) {
      return rod.shiftHz(hardness, forceNewtons, specimen, contactFactor);
    }

    @Override
    public double hardness(double response, ElasticConstants specimen, double contactFactor) {
      return rod.hardness(response, forceNewtons, specimen, contactFactor);
    }
  }

  /**
   * A rebound device.
   *
   * @param body its impact body
   */
  record Rebound(ReboundBody body) implements ResponseLaw {
    @Override
    public double response(double hardness, ElasticConstants specimen, double contactFactor) {
      return body.response(hardness * contactFactor, specimen);
    }

    @Override
    public double hardness(double response, ElasticConstants specimen, double contactFactor) {
      return body.hardness(response, specimen) / contactFactor;
    }
  }
}
