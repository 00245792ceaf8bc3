package fettle.fit;

/**
 * How strongly a step of β is held back (D. W. Marquardt, SIAM J. 11 (1963) 431): not at all at
 * first; the more firmly the oftener a step fails, the sooner released the oftener steps succeed.
 */
final class Damping {
  private static final double FIRST = 1e-3;
  private static final double SMALLEST = 1e-18;
  private static final double LARGEST = 1e12;
  private static final double FIRST_GRIP = 4;
  private static final double LARGEST_EASE = 1e6;

  private double value;
  private double last = FIRST;
  private double ease = 1;
  private double grip = FIRST_GRIP;

  /** Share of each column's squared length that is added to it. */
  double value() {
    return value;
  }

  /** After a step that was taken. */
  void loosen() {
    if (value > 0) {
      last = value;
    }
    ease = Math.min(ease * 10, LARGEST_EASE);
    value = value > SMALLEST * ease ? value / ease : 0;
    grip = FIRST_GRIP;
  }

  /**
   * After a step that failed.
   *
   * @return false where it cannot be held back any more
   */
  boolean tighten() {
    if (value >= LARGEST) {
      return false;
    }
    value = value == 0 ? last : value * grip;
    grip *= 2;
    ease = 1;
    return true;
  }

  /** Begins anew. */
  void release() {
    value = 0;
    grip = FIRST_GRIP;
    ease = 1;
  }
}
