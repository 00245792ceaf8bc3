package fettle.reading;

import java.util.List;
import java.util.Objects;

/**
 * The readings of one file, tied to its bytes.
 *
 * @param file name of the file
 * @param sha256 SHA-256 of its bytes, 64 hexadecimal digits in lower case
 * @param readings at least one, in the order of the file
 */
public record ReadingsFile(String file, String sha256, List<Reading> readings) {
  /** Checks and copies. */
  public ReadingsFile {
    Objects.requireNonNull(file);
    if (!sha256.matches("[0-9a-f]{64}")) {
      throw new IllegalArgumentException("sha256 " + sha256 + ": 64 hexadecimal digits expected");
    }
    readings = List.copyOf(readings);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("readings of " + file + ": at least one expected");
    }
  }
}
