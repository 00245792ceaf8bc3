package fettle.reading;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The kept readings of one block in one run.
 *
 * @param run the run's label; empty for readings without one
 * @param readings at least one, in the order in which they came
 */
public record RunReadings(Optional<String> run, List<Reading> readings) {
  /** Checks and copies. */
  public RunReadings {
    Objects.requireNonNull(run);
    readings = List.copyOf(readings);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("readings of run " + run + ": at least one expected");
    }
  }
}
