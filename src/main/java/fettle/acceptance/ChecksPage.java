package fettle.acceptance;

import java.util.List;

/** The page of all checks for a reader, written from the checks themselves, in Markdown. */
public final class ChecksPage {
  private ChecksPage() {}

  /**
   * The page.
   *
   * @return Markdown, lines ended by a line feed
   */
  public static String markdown() {
    StringBuilder page = new StringBuilder();
    page.append("# The acceptance checks\n\n")
        .append("Every check asks one question of an analysis. This page is written from the")
        .append(" checks themselves.\n\n")
        .append("- A failed check, or one whose data are missing, **stops release**, **needs a")
        .append(
            " written reason**, or is a **note**; what stands below is the worst it may mean.\n")
        .append("- A limit is a default. A policy file replaces it under the name given, with a")
        .append(" citation; findings say which one was in force.\n")
        .append("- Figures \"from memory\" and figures without a source are no statement of what a")
        .append(" standard asks; the governing code and qualified people decide.\n\n")
        .append("| check | question | means at worst |\n")
        .append("| --- | --- | --- |\n");
    for (Check check : Checks.all()) {
      page.append("| [")
          .append(check.id())
          .append("](#")
          .append(check.id())
          .append(") | ")
          .append(cell(check.question()))
          .append(" | ")
          .append(check.severity().text())
          .append(" |\n");
    }
    for (Check check : Checks.all()) {
      append(page, check);
    }
    return page.toString();
  }

  private static void append(StringBuilder page, Check check) {
    page.append("\n## ").append(check.id()).append("\n\n");
    page.append(check.question()).append("\n\n");
    page.append("- **Why:** ").append(check.why()).append('\n');
    page.append("- **What to do:** ").append(check.remedy()).append('\n');
    page.append("- **Source:** ").append(check.citation()).append(".\n");
    page.append("- **Means at worst:** ").append(check.severity().text()).append(".\n");
    List<CheckLimit> limits = check.limits();
    if (limits.isEmpty()) {
      page.append("- **Limit:** none; it judges a fact or a figure of the policy.\n");
      return;
    }
    page.append("\n| limit | default | what it limits |\n| --- | --- | --- |\n");
    for (CheckLimit limit : limits) {
      page.append("| `")
          .append(limit.id())
          .append("` | ")
          .append(limit.text())
          .append(" | ")
          .append(cell(limit.meaning()))
          .append(" |\n");
    }
  }

  /** A bar would end the cell. */
  private static String cell(String text) {
    return text.replace("|", "\\|");
  }
}
