package fettle.library;

import java.util.List;

/**
 * What computing a curve again showed.
 *
 * @param identical whether the content has the same bytes
 * @param largestRelativeDifference largest relative difference of two numbers at one place
 * @param differences places that differ, with both values; at most twenty
 * @param message the outcome in one sentence
 */
public record Recomputation(
    boolean identical, double largestRelativeDifference, List<String> differences, String message) {
  /** Copies. */
  public Recomputation {
    differences = List.copyOf(differences);
  }
}
