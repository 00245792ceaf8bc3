package fettle.calibration;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * Something in the readings that deserves a look. A flag never leaves anything out.
 *
 * @param kind what sort of thing
 * @param block block it is about
 * @param file readings file
 * @param line line in that file
 * @param statistic test statistic
 * @param critical critical value it exceeds
 * @param level significance level of the critical value
 * @param message one sentence with figures
 */
public record ScreeningFlag(
    Kind kind,
    String block,
    Optional<String> file,
    OptionalInt line,
    double statistic,
    double critical,
    double level,
    String message) {
  /** Sorts of flags. */
  public enum Kind {
    /** One reading far from the others on its block. */
    OUTLIER("outlier"),
    /** One cell that scatters more than the others. */
    VARIANCE("variance");

    private final String id;

    Kind(String id) {
      this.id = id;
    }

    /**
     * The word in files.
     *
     * @return in lower case
     */
    public String id() {
      return id;
    }
  }
}
