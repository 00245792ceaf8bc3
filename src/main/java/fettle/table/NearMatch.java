package fettle.table;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Names that were probably meant: other punctuation, or few letters off. */
public final class NearMatch {
  private NearMatch() {}

  /**
   * The candidate that was probably meant by a name.
   *
   * @param name a name that is none of the candidates
   * @param candidates names that are known
   * @return the nearest, where at most a third of its letters are off
   */
  public static Optional<String> of(String name, List<String> candidates) {
    String best = null;
    int least = Integer.MAX_VALUE;
    for (String candidate : candidates) {
      int distance = distance(letters(name), letters(candidate));
      if (distance < least && distance <= Math.max(1, letters(candidate).length() / 3)) {
        best = candidate;
        least = distance;
      }
    }
    return Optional.ofNullable(best);
  }

  /** Whether a name is a known one with other punctuation or, from 5 letters on, one letter off. */
  static boolean isMisspelling(String name, String known) {
    String seen = letters(name);
    String meant = letters(known);
    return seen.equals(meant) || meant.length() >= 5 && distance(seen, meant) == 1;
  }

  private static String letters(String name) {
    StringBuilder letters = new StringBuilder();
    String lower = Header.key(name);
    for (int i = 0; i < Math.min(lower.length(), 80); i++) {
      if (Character.isLetterOrDigit(lower.charAt(i))) {
        letters.append(lower.charAt(i));
      }
    }
    return letters.toString();
  }

  /** Letters to insert, delete, replace or swap with their neighbour (optimal string alignment). */
  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    Arrays.setAll(d[0], j -> j);
    for (int i = 1; i <= a.length(); i++) {
      d[i][0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replace = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        d[i][j] = Math.min(replace, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], 1 + d[i - 2][j - 2]);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
