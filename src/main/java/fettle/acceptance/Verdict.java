package fettle.acceptance;

import java.util.List;

/** What all findings together mean for release. */
public enum Verdict {
  /** Nothing stands in the way. */
  PASS("pass"),
  /** Written reasons are needed. */
  REASONS_NEEDED("reasons needed"),
  /** Something stops the release. */
  FAIL("fail");

  private final String text;

  Verdict(String text) {
    this.text = text;
  }

  /**
   * The words in files and reports.
   *
   * @return for example {@code reasons needed}
   */
  public String text() {
    return text;
  }

  /**
   * The verdict of a set of findings: a check that stops release and failed, or whose data are
   * missing, makes it fail; one that needs a reason likewise asks for one.
   *
   * @param findings all findings
   * @return the verdict
   */
  public static Verdict of(List<Finding> findings) {
    Verdict verdict = PASS;
    for (Finding finding : findings) {
      if (finding.outcome() == Outcome.PASSED || finding.severity() == Severity.NOTE) {
        continue;
      }
      if (finding.severity() == Severity.STOPS_RELEASE) {
        return FAIL;
      }
      verdict = REASONS_NEEDED;
    }
    return verdict;
  }
}
