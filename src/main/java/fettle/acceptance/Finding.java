package fettle.acceptance;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One answer of one check.
 *
 * @param checkId id of the check
 * @param severity what a failure of it means here
 * @param outcome the answer
 * @param value figure that was judged
 * @param limit figure it was judged against
 * @param block block it speaks of
 * @param file readings file it speaks of
 * @param line line in that file
 * @param message one sentence with figures and units
 */
public record Finding(
    String checkId,
    Severity severity,
    Outcome outcome,
    OptionalDouble value,
    OptionalDouble limit,
    Optional<String> block,
    Optional<String> file,
    OptionalInt line,
    String message) {
  /** Checks that nothing is missing. */
  public Finding {
    Objects.requireNonNull(checkId);
    Objects.requireNonNull(severity);
    Objects.requireNonNull(outcome);
    if (message == null || message.isBlank()) {
      throw new IllegalArgumentException("message of " + checkId + ": one sentence expected");
    }
  }
}
