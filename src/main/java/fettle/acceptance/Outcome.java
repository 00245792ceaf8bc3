package fettle.acceptance;

/** Answer of a check. */
public enum Outcome {
  /** The requirement is met. */
  PASSED,
  /** The requirement is not met. */
  FAILED,
  /** The data for this check are missing. */
  DATA_MISSING
}
