package fettle.report;

import java.util.Objects;

/**
 * A file that the curve rests on.
 *
 * @param name name in the laboratory folder
 * @param sha256 SHA-256 of its bytes, 64 hexadecimal digits in lower case
 */
public record ReportInput(String name, String sha256) {
  /** Checks that nothing is missing. */
  public ReportInput {
    Objects.requireNonNull(name);
    if (!sha256.matches("[0-9a-f]{64}")) {
      throw new IllegalArgumentException("sha256 " + sha256 + ": 64 hexadecimal digits expected");
    }
  }
}
