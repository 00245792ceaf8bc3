package fettle.calibration;

import fettle.block.BlockRole;
import fettle.fit.Points;
import java.util.List;
import java.util.Optional;

/**
 * All that a campaign shows, before anybody judges it.
 *
 * @param campaign blocks, readings, exclusions and the dossier
 * @param blocks every block read, in order of certified hardness
 * @param variance scatter of the responses
 * @param points the fitting blocks as points, in the order of {@link #fittingBlocks()}
 * @param candidates every model tried
 * @param recommendation what their numbers recommend
 * @param chosen the curve, empty where none was recommended and none was chosen
 */
public record Analysis(
    Campaign campaign,
    List<BlockResponse> blocks,
    ResponseVariance variance,
    Points points,
    List<Candidate> candidates,
    Recommendation recommendation,
    Optional<ChosenCurve> chosen) {
  /** Copies. */
  public Analysis {
    blocks = List.copyOf(blocks);
    candidates = List.copyOf(candidates);
  }

  /**
   * The blocks that shape the curve.
   *
   * @return in the order of the points
   */
  public List<BlockResponse> fittingBlocks() {
    return withRole(BlockRole.FIT);
  }

  /**
   * The blocks of one role.
   *
   * @param role role
   * @return in order of certified hardness
   */
  public List<BlockResponse> withRole(BlockRole role) {
    return blocks.stream().filter(block -> block.role() == role).toList();
  }
}
