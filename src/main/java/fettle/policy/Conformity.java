package fettle.policy;

/** Verdict on one error against its limit (ILAC-G8:09/2019, non-binary statement). */
public enum Conformity {
  /** Inside the limit by at least the guard band. */
  PASS("pass"),
  /** Inside the limit, but within the guard band. */
  CONDITIONAL_PASS("conditional pass"),
  /** Outside the limit, but within the guard band. */
  CONDITIONAL_FAIL("conditional fail"),
  /** Outside the limit by more than the guard band. */
  FAIL("fail");

  private final String text;

  Conformity(String text) {
    this.text = text;
  }

  /**
   * The words in files and reports.
   *
   * @return for example {@code conditional pass}
   */
  public String text() {
    return text;
  }
}
