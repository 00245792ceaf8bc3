package fettle.calibration;

import fettle.block.BlockRole;
import fettle.block.ReferenceBlock;
import fettle.curve.CurveIdentity;
import fettle.policy.Policy;
import java.util.Map;
import java.util.Objects;

/**
 * One job: a material, a scale, a method, and which block plays which role.
 *
 * @param identity what the curve is for
 * @param roles roles that differ from the blocks' own defaults, by block id
 * @param policy the laboratory's policy for it
 */
public record Dossier(CurveIdentity identity, Map<String, BlockRole> roles, Policy policy) {
  /** Checks and copies. */
  public Dossier {
    Objects.requireNonNull(identity);
    Objects.requireNonNull(policy);
    roles = Map.copyOf(roles);
  }

  /**
   * The role of a block here.
   *
   * @param block the block
   * @return this dossier's word, else the block's default
   */
  public BlockRole roleOf(ReferenceBlock block) {
    return roles.getOrDefault(block.id(), block.defaultRole());
  }
}
