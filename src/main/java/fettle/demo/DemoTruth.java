package fettle.demo;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The truth behind one dossier: what a laboratory never knows, kept to test what is computed.
 *
 * <p>The true curve belongs to a block of the member's mean modulus and mean contact factor, read
 * without operator, run and reading effects, at 23 °C, on the true hardness scale: without the
 * bench machine's error. Safe for several threads.
 */
public final class DemoTruth {
  private final MemberPlan plan;
  private final Map<String, Double> hardness = new LinkedHashMap<>();

  DemoTruth(Campaign campaign) {
    this.plan = campaign.plan();
    campaign.bronze().forEach(block -> hardness.put(block.block().id(), block.trueHardness()));
    campaign.steel().forEach(block -> hardness.put(block.block().id(), block.trueHardness()));
  }

  /**
   * The true curve.
   *
   * @param response corrected response in the dossier's response unit, within the instrument's
   *     bounds
   * @return true hardness in the dossier's scale
   */
  public double trueHardness(double response) {
    return plan.law().hardness(response, plan.elastic(), plan.contactFactor());
  }

  /**
   * The inverse of the true curve.
   *
   * @param trueHardness hardness in the dossier's scale, above 0
   * @return corrected response in the dossier's response unit
   */
  public double response(double trueHardness) {
    return plan.law().response(trueHardness, plan.elastic(), plan.contactFactor());
  }

  /**
   * True mean hardness of a block over its face.
   *
   * @param block a block of the dossier
   * @return in the dossier's scale
   */
  public double trueHardnessOf(String block) {
    Double known = hardness.get(block);
    if (known == null) {
      throw new IllegalArgumentException(
          "block " + block + ": one of " + hardness.keySet() + " expected");
    }
    return known;
  }
}
