package fettle.report;

import fettle.acceptance.Check;
import fettle.acceptance.Finding;
import fettle.acceptance.Outcome;
import fettle.acceptance.Severity;
import freemarker.template.TemplateModel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The findings, what stops release first; what passed comes last. */
final class FindingsSection {
  private FindingsSection() {}

  /**
   * What the template shows.
   *
   * @param open groups of what did not pass, worst first; empty groups are left out
   * @param passed checks with what passed of them
   * @param answers number of findings that passed
   * @param none whether no check was run
   */
  public record View(List<Group> open, List<Passed> passed, int answers, boolean none) {}

  /**
   * Findings of one severity.
   *
   * @param title heading
   * @param style its style
   * @param rows findings
   */
  public record Group(String title, String style, List<Row> rows) {}

  /**
   * What passed of one check: its question and origin once, then every answer.
   *
   * @param first its first finding
   * @param answers all its findings that passed
   */
  public record Passed(Row first, List<Row> answers) {}

  /**
   * One finding.
   *
   * @param question what was asked, or the check's id
   * @param check id of the check
   * @param message the answer
   * @param missing whether its data are missing
   * @param place block, file and line
   * @param remedy what to do
   * @param citation where the requirement comes from
   */
  public record Row(
      String question,
      String check,
      TemplateModel message,
      boolean missing,
      String place,
      String remedy,
      String citation) {}

  static View of(ReportContent content) {
    Map<String, Check> checks = new LinkedHashMap<>();
    content.checks().forEach(check -> checks.put(check.id(), check));
    List<Group> open = new ArrayList<>();
    for (Severity severity : Severity.values()) {
      List<Row> rows = new ArrayList<>();
      for (Finding finding : content.findings()) {
        if (finding.outcome() != Outcome.PASSED && finding.severity() == severity) {
          rows.add(row(finding, checks));
        }
      }
      if (!rows.isEmpty()) {
        open.add(new Group(title(severity), style(severity), rows));
      }
    }
    List<Row> passed =
        content.findings().stream()
            .filter(finding -> finding.outcome() == Outcome.PASSED)
            .map(finding -> row(finding, checks))
            .toList();
    Map<String, List<Row>> byCheck = new LinkedHashMap<>();
    passed.forEach(row -> byCheck.computeIfAbsent(row.check(), id -> new ArrayList<>()).add(row));
    List<Passed> checked =
        byCheck.values().stream().map(rows -> new Passed(rows.get(0), rows)).toList();
    return new View(open, checked, passed.size(), content.findings().isEmpty());
  }

  private static String title(Severity severity) {
    return switch (severity) {
      case STOPS_RELEASE -> "Stops release";
      case NEEDS_REASON -> "Needs a written reason";
      case NOTE -> "Notes";
    };
  }

  private static String style(Severity severity) {
    return switch (severity) {
      case STOPS_RELEASE -> "stop";
      case NEEDS_REASON -> "reason";
      case NOTE -> "note";
    };
  }

  private static Row row(Finding finding, Map<String, Check> checks) {
    Check check = checks.get(finding.checkId());
    List<String> place = new ArrayList<>();
    finding.block().ifPresent(block -> place.add("block " + block));
    finding
        .file()
        .ifPresent(
            file ->
                place.add(
                    finding.line().isPresent()
                        ? file + ", line " + finding.line().getAsInt()
                        : file));
    boolean passed = finding.outcome() == Outcome.PASSED;
    return new Row(
        check == null ? "" : check.question(),
        finding.checkId(),
        Markup.sentence(finding.message()),
        finding.outcome() == Outcome.DATA_MISSING,
        String.join("; ", place),
        check == null || passed ? "" : check.remedy(),
        check == null ? "" : check.citation());
  }
}
