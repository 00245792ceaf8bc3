package fettle.acceptance;

import fettle.calibration.Analysis;
import fettle.policy.Policy;
import java.time.LocalDate;

/**
 * What checks may look at.
 *
 * @param analysis the campaign, its numbers and the chosen curve
 * @param assessedOn the day of assessment, for validities
 */
public record Evidence(Analysis analysis, LocalDate assessedOn) {
  /**
   * The policy in force.
   *
   * @return the dossier's policy
   */
  public Policy policy() {
    return analysis.campaign().dossier().policy();
  }
}
