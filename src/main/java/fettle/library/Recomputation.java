package fettle.library;

import java.util.List;

/**
 * What computing a curve again showed.
 *
 * @param identical whether the content has the same bytes
 * @param largestRelativeDifference largest relative difference of two numbers at one place
 * @param differences JSON paths that differ beyond a relative 1e-12, with both values; at most 20
 * @param message the outcome in one sentence
 */
public record Recomputation(
    boolean identical, double largestRelativeDifference, List<String> differences, String message) {
  /** Copies. */
  public Recomputation {
    differences = List.copyOf(differences);
  }

  /**
   * Whether the curve is the same for every purpose.
   *
   * @return true for the same bytes, and for numbers all within a relative 1e-12
   */
  public boolean agrees() {
    return differences.isEmpty();
  }
}
