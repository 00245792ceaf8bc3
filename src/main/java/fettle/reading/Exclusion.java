package fettle.reading;

import java.time.Instant;
import java.util.Objects;

/**
 * A reading left out of the fit by a named person for a stated reason. The reading itself stays.
 *
 * @param file readings file
 * @param line line in that file
 * @param by person
 * @param reason reason in that person's words, not blank
 * @param at when it was decided
 */
public record Exclusion(String file, int line, String by, String reason, Instant at) {
  /** Checks that a person and a reason are there. */
  public Exclusion {
    Objects.requireNonNull(file);
    Objects.requireNonNull(at);
    if (by == null || by.isBlank()) {
      throw new IllegalArgumentException("by: a person is expected");
    }
    if (reason == null || reason.isBlank()) {
      throw new IllegalArgumentException("reason: a reason is expected");
    }
  }

  /**
   * Whether this exclusion speaks of a reading.
   *
   * @param reading the reading
   * @return true if file and line agree
   */
  public boolean covers(Reading reading) {
    return reading.line() == line && reading.file().equals(file);
  }
}
