package fettle.calibration;

import fettle.curve.Curve;
import java.util.List;
import java.util.Optional;

/**
 * The curve that the draft carries.
 *
 * @param fit the candidate it comes from
 * @param choice the person's choice, empty where the recommendation was followed
 * @param curve the curve with its range
 * @param checkBlocks verdict of the blocks kept out of it
 * @param monotoneShare share of parameter draws that are strictly monotone over the range
 */
public record ChosenCurve(
    CandidateFit fit,
    Optional<ModelChoice> choice,
    Curve curve,
    List<CheckBlockResult> checkBlocks,
    double monotoneShare) {
  /** Copies. */
  public ChosenCurve {
    checkBlocks = List.copyOf(checkBlocks);
  }
}
