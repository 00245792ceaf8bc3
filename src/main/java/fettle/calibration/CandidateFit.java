package fettle.calibration;

import fettle.fit.CurveFit;
import fettle.fit.Monotonicity;
import fettle.fit.ResponseModel;
import fettle.uncertainty.BetweenBlockScatter;
import fettle.uncertainty.PredictedBlock;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The numbers by which a candidate is judged.
 *
 * @param model bound model
 * @param scatter between-block scatter with the fits at τ = 0 and at τ̂
 * @param upperTail probability of a χ² at least as large as Q at τ = 0 if the stated uncertainties
 *     were all
 * @param gamma largest weighted deviation at τ = 0 (ISO 6143: at most 2, from memory)
 * @param gammaBlock index of its block
 * @param aicc Akaike's criterion with small-sample correction, τ counted as a parameter; empty
 *     where the blocks are too few for it
 * @param predicted each block predicted by the others
 * @param leaveOneOutRms root mean square of those errors
 * @param leaveOneOutStandardError its standard error
 * @param monotonicity proven over the blocks' responses
 * @param topT top coefficient over its standard uncertainty
 */
public record CandidateFit(
    ResponseModel model,
    BetweenBlockScatter scatter,
    double upperTail,
    double gamma,
    int gammaBlock,
    OptionalDouble aicc,
    List<PredictedBlock> predicted,
    double leaveOneOutRms,
    double leaveOneOutStandardError,
    Monotonicity monotonicity,
    double topT) {

  /**
   * The fit at the estimated scatter, whose coefficients the curve carries.
   *
   * @return fit at τ̂
   */
  public CurveFit chosen() {
    return scatter.atRestricted();
  }
}
