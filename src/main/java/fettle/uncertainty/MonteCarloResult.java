package fettle.uncertainty;

import java.util.List;

/**
 * A Monte Carlo propagation.
 *
 * @param trials number of trials made
 * @param failed trials that gave no value and are left out; a share worth a word is a finding
 * @param seed seed; the same seed gives the same bits on any number of threads
 * @param settled whether the adaptive procedure reached its tolerance; true for a fixed number
 * @param outputs one for each output quantity
 */
public record MonteCarloResult(
    long trials, long failed, long seed, boolean settled, List<MonteCarloOutput> outputs) {
  /** Copies. */
  public MonteCarloResult {
    outputs = List.copyOf(outputs);
  }
}
