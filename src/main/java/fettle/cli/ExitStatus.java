package fettle.cli;

/** What the program's exit status means. */
final class ExitStatus {
  /** Done. */
  static final int DONE = 0;

  /** The work was done and its verdict is negative. */
  static final int NEGATIVE = 1;

  /** The input or the call is wrong. */
  static final int REFUSED = 2;

  /** An internal error. */
  static final int INTERNAL = 3;

  private ExitStatus() {}
}
