package fettle.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.reference.ReferenceCase;

/** Loads this package's reference cases and compares with them. */
final class Cases {
  private Cases() {}

  static ReferenceCase load(String path) {
    return ReferenceCase.load("/fettle/statistics/reference/" + path);
  }

  /** Compares with the recomputed value (relative) and, where it rounds there, the printed one. */
  static void assertNumber(
      ReferenceCase file, String pointer, double actual, double relativeTolerance) {
    ReferenceCase.Expected expected = file.expected(pointer);
    double tolerance = Math.abs(expected.value()) * relativeTolerance;
    assertEquals(expected.value(), actual, Math.max(tolerance, Double.MIN_NORMAL), pointer);
    if (expected.printed() != null && expected.roundsToPrinted()) {
      // a tie may round to either side, hence the small allowance
      assertEquals(
          Double.parseDouble(expected.printed()),
          actual,
          expected.halfPrintedUnit() * (1 + 1e-6) + tolerance,
          pointer + " as printed");
    }
  }

  static void assertRelative(double expected, double actual, double relativeTolerance) {
    assertEquals(expected, actual, Math.abs(expected) * relativeTolerance);
  }
}
