package fettle.cli;

import fettle.acceptance.Finding;
import fettle.acceptance.Outcome;
import fettle.acceptance.Severity;
import fettle.acceptance.Verdict;
import java.io.IOException;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Findings as JSON or as text: what stops the release first, then what needs a reason, then notes
 * folded to a count.
 *
 * @param dossier name of the dossier
 * @param findings all findings
 */
record FindingsOutput(String dossier, List<Finding> findings) {
  private static final int SHOWN = 2;

  Verdict verdict() {
    return Verdict.of(findings);
  }

  String json() {
    return JsonOut.object(
        json ->
            json.put("dossier", dossier)
                .put("verdict", verdict().text())
                .putArray("findings", this::findings));
  }

  private void findings(JsonOut list) throws IOException {
    for (Finding finding : findings) {
      list.addObject(
          one -> {
            one.put("id", finding.checkId()).put("severity", finding.severity().text());
            if (finding.outcome() == Outcome.DATA_MISSING) {
              one.putNull("passed");
            } else {
              one.put("passed", finding.outcome() == Outcome.PASSED);
            }
            one.put("value", finding.value())
                .put("limit", finding.limit())
                .put("block", finding.block())
                .put("file", finding.file());
            if (finding.line().isPresent()) {
              one.put("line", finding.line().getAsInt());
            } else {
              one.putNull("line");
            }
            one.put("message", finding.message());
          });
    }
  }

  void print(PrintStream out) {
    out.println(dossier + ": " + verdict().text());
    section(out, "Stops the release", Severity.STOPS_RELEASE);
    section(out, "Needs a written reason", Severity.NEEDS_REASON);
    long notes = open(Severity.NOTE).size();
    long passed = findings.stream().filter(f -> f.outcome() == Outcome.PASSED).count();
    out.println();
    out.println(
        "  "
            + counted(passed, "check")
            + " passed; "
            + counted(notes, "note")
            + " not shown here (--json and the report show all).");
  }

  private static String counted(long number, String noun) {
    return number + " " + noun + (number == 1 ? "" : "s");
  }

  private void section(PrintStream out, String title, Severity severity) {
    List<Finding> open = open(severity);
    if (open.isEmpty()) {
      return;
    }
    out.println();
    out.println("  " + title);
    Map<String, List<Finding>> byCheck = new LinkedHashMap<>();
    for (Finding finding : open) {
      byCheck.computeIfAbsent(finding.checkId(), id -> new ArrayList<>()).add(finding);
    }
    byCheck.forEach((id, list) -> check(out, id, list));
  }

  /** A check that says the same of many blocks says it twice and counts the rest. */
  private static void check(PrintStream out, String id, List<Finding> list) {
    int shown = list.size() <= SHOWN + 1 ? list.size() : SHOWN;
    for (Finding finding : list.subList(0, shown)) {
      String mark = finding.outcome() == Outcome.DATA_MISSING ? "data missing: " : "";
      out.println("  - " + mark + finding.message());
    }
    if (shown < list.size()) {
      String blocks =
          list.subList(shown, list.size()).stream()
              .map(finding -> finding.block().orElse("another place"))
              .limit(12)
              .collect(Collectors.joining(", "));
      out.println(
          "  - and the same of "
              + (list.size() - shown)
              + " more: "
              + blocks
              + (list.size() - shown > 12 ? " …" : ""));
    }
    out.println("    (" + id + ")");
  }

  private List<Finding> open(Severity severity) {
    return findings.stream()
        .filter(f -> f.severity() == severity && f.outcome() != Outcome.PASSED)
        .toList();
  }
}
