package fettle.refusal;

import java.util.Objects;

/**
 * Input that cannot be used: a file, a cell, an option, a state of the folder.
 *
 * <p>The message is complete and meant for a person: what is wrong, where, what was expected, what
 * to do. Whoever throws it has changed nothing.
 */
public final class InputRefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String what;
  private final String where;
  private final String expected;
  private final String action;

  /**
   * A refusal.
   *
   * @param what one sentence: what is wrong, with the value seen
   * @param where file, line, column or option where it stands
   * @param expected what would have been accepted
   * @param action what the person can do next
   */
  public InputRefusedException(String what, String where, String expected, String action) {
    super(text(what, where, expected, action));
    this.what = Objects.requireNonNull(what);
    this.where = Objects.requireNonNull(where);
    this.expected = Objects.requireNonNull(expected);
    this.action = Objects.requireNonNull(action);
  }

  private static String text(String what, String where, String expected, String action) {
    return what
        + "\n  where     "
        + where
        + "\n  expected  "
        + expected
        + "\n  do        "
        + action;
  }

  /**
   * What is wrong.
   *
   * @return one sentence with the value seen
   */
  public String what() {
    return what;
  }

  /**
   * Where it stands.
   *
   * @return file, line, column or option
   */
  public String where() {
    return where;
  }

  /**
   * What would have been accepted.
   *
   * @return a phrase
   */
  public String expected() {
    return expected;
  }

  /**
   * What to do next.
   *
   * @return a phrase
   */
  public String action() {
    return action;
  }
}
