package fettle.calibration;

import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import java.util.List;
import java.util.Map;

/**
 * A block of the campaign with its certificate and the readings kept on it.
 *
 * @param block the block
 * @param role its role in the dossier
 * @param certificate certificate in force on the dossier's scale
 * @param responses kept responses in file order, corrected for the free-rod frequency
 * @param mean mean response
 * @param standardDeviation of single responses, 0 for one reading
 * @param readingsPerRun kept readings by run; runs in order of name
 * @param readingsPerOperator kept readings by operator
 * @param meanPerRun mean response by run
 * @param withinRunSumOfSquares Σ (r − run mean)²
 */
public record BlockResponse(
    ReferenceBlock block,
    BlockRole role,
    Certificate certificate,
    List<Double> responses,
    double mean,
    double standardDeviation,
    Map<String, Integer> readingsPerRun,
    Map<String, Integer> readingsPerOperator,
    Map<String, Double> meanPerRun,
    double withinRunSumOfSquares) {

  /**
   * Number of kept readings.
   *
   * @return n, at least 1
   */
  public int count() {
    return responses.size();
  }

  /**
   * Share of this block's readings taken in a run.
   *
   * @param run run
   * @return between 0 and 1
   */
  public double shareOfRun(String run) {
    return readingsPerRun.getOrDefault(run, 0) / (double) count();
  }

  /**
   * Share of this block's readings taken by an operator.
   *
   * @param operator operator
   * @return between 0 and 1
   */
  public double shareOfOperator(String operator) {
    return readingsPerOperator.getOrDefault(operator, 0) / (double) count();
  }
}
