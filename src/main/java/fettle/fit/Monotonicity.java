package fettle.fit;

/** What has been proven of a curve's slope over an interval. */
public enum Monotonicity {
  /** The slope is above 0 everywhere. */
  INCREASING,
  /** The slope is below 0 everywhere. */
  DECREASING,
  /** The slope has both signs, or vanishes, inside the interval. */
  NOT_MONOTONE,
  /** Neither could be proven in double precision: treated as not monotone. */
  UNDECIDED;

  /**
   * Whether strict monotonicity is proven.
   *
   * @return true for the first two
   */
  public boolean isProven() {
    return this == INCREASING || this == DECREASING;
  }
}
