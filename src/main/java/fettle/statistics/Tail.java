package fettle.statistics;

/** Which end of the values, or of a statistic, a test looks at. */
public enum Tail {
  /** The largest value, or large values of the statistic. */
  UPPER,
  /** The smallest value, or small values of the statistic. */
  LOWER,
  /** Either, whichever is farther out: the two-sided test. */
  EITHER
}
