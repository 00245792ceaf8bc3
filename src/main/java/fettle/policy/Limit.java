package fettle.policy;

import java.time.LocalDate;
import java.util.Objects;

/**
 * A limit with where it comes from and who entered it.
 *
 * @param value the limit, in the unit of the check it belongs to
 * @param citation document, edition and table, or the words that say it is an example
 * @param enteredBy person
 * @param on date of entry
 */
public record Limit(double value, String citation, String enteredBy, LocalDate on) {
  /** Checks that the origin is there. */
  public Limit {
    Objects.requireNonNull(on);
    if (citation == null || citation.isBlank() || enteredBy == null || enteredBy.isBlank()) {
      throw new IllegalArgumentException("limit " + value + ": citation and enteredBy expected");
    }
  }
}
