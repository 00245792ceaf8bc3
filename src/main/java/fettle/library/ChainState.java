package fettle.library;

import java.util.Objects;
import java.util.Optional;

/**
 * What a history's chain of hashes says.
 *
 * @param events number of sound events from the first on
 * @param head hash of the last of them; 64 zeros where there is none
 * @param damage what is wrong after them with its line, empty for a sound chain
 * @param unfinished whether a last line was begun and not ended, which the next event replaces: a
 *     crash while it was written, and nothing that had happened
 */
public record ChainState(int events, String head, Optional<String> damage, boolean unfinished) {
  /** Checks that nothing is missing. */
  public ChainState {
    Objects.requireNonNull(head);
    Objects.requireNonNull(damage);
  }

  /**
   * Whether nothing is wrong.
   *
   * @return true for a sound chain, with or without an unfinished line
   */
  public boolean isSound() {
    return damage.isEmpty();
  }
}
