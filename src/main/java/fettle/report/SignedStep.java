package fettle.report;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What a person has answered for in the life of a curve.
 *
 * @param step what was done, for example {@code submitted} or {@code approved}
 * @param person who did it
 * @param on the day
 * @param reason reason in that person's words
 */
public record SignedStep(String step, String person, LocalDate on, Optional<String> reason) {
  /** Checks that nothing is missing. */
  public SignedStep {
    Objects.requireNonNull(step);
    Objects.requireNonNull(person);
    Objects.requireNonNull(on);
    Objects.requireNonNull(reason);
  }
}
