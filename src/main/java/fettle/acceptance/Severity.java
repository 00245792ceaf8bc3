package fettle.acceptance;

/** What a failed check means for release. */
public enum Severity {
  /** The curve may not be released. */
  STOPS_RELEASE("stops release"),
  /** The curve may be released with a written reason that the reviewer accepts. */
  NEEDS_REASON("needs a written reason"),
  /** For information. */
  NOTE("note");

  private final String text;

  Severity(String text) {
    this.text = text;
  }

  /**
   * The words in files and reports.
   *
   * @return for example {@code stops release}
   */
  public String text() {
    return text;
  }
}
