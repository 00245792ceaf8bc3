package fettle.report;

import fettle.acceptance.Finding;
import fettle.acceptance.Outcome;
import fettle.acceptance.Severity;
import fettle.acceptance.Verdict;
import fettle.calibration.ChosenCurve;
import fettle.curve.CurveIdentity;
import fettle.curve.ValidRange;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The head of the report: what it is, in which state, and the answer in a few lines. */
final class HeadSection {
  private HeadSection() {}

  /**
   * What the template shows.
   *
   * @param title name of the curve
   * @param subtitle material and scale
   * @param state state of the curve
   * @param watermark word behind the text, empty for a released curve
   * @param simulated whether the numbers are simulated
   * @param verdict verdict of the checks
   * @param verdictClass its style
   * @param summary the answer in a few lines
   * @param pageMark what stands at the foot of every page, safe inside a style sheet
   */
  public record View(
      String title,
      String subtitle,
      String state,
      String watermark,
      boolean simulated,
      String verdict,
      String verdictClass,
      List<Fact> summary,
      String pageMark) {}

  static View of(ReportContent content) {
    CurveIdentity identity = content.analysis().campaign().dossier().identity();
    boolean simulated = isSimulated(content);
    boolean released = content.state().equals("released");
    String watermark = released ? "" : content.state();
    if (simulated) {
      watermark = released ? "simulated" : watermark + " · simulated";
    }
    Verdict verdict = Verdict.of(content.findings());
    String name = identity.dossier() + content.version().map(n -> ", version " + n).orElse("");
    return new View(
        name,
        identity.material() + ", " + identity.scale(),
        content.state(),
        watermark,
        simulated,
        content.findings().isEmpty() ? "not assessed" : verdict.text(),
        content.findings().isEmpty() ? "none" : verdict.name().toLowerCase(Locale.ROOT),
        summary(content),
        cssSafe(name + " · " + content.state() + " · " + content.shortFingerprint()));
  }

  static boolean isSimulated(ReportContent content) {
    var dossier = content.analysis().campaign().dossier();
    return mentions(dossier.identity().title()) || mentions(Optional.of(dossier.policy().title()));
  }

  private static boolean mentions(Optional<String> text) {
    return text.map(t -> t.toLowerCase(Locale.ROOT).contains("simulated")).orElse(false);
  }

  private static List<Fact> summary(ReportContent content) {
    List<Fact> facts = new ArrayList<>();
    Units units = Units.of(content.analysis().campaign().dossier().identity());
    Optional<ChosenCurve> chosen = content.analysis().chosen();
    if (chosen.isPresent()) {
      ValidRange range = chosen.get().curve().range();
      facts.add(
          new Fact(
              "Valid from",
              RangeSection.hardnessSpan(range, chosen.get().curve().evaluator(), units)));
      facts.add(new Fact("Model", ModelNames.of(chosen.get().curve().model())));
    } else {
      facts.add(new Fact("Curve", "none: no model is recommended and none was chosen"));
    }
    facts.add(
        new Fact(
            "Blocks",
            counted(content.analysis().fittingBlocks().size(), "for fitting")
                + ", "
                + counted(ChartPoints.checkBlocks(content.analysis()).size(), "for checking")));
    facts.add(new Fact("Checks", checks(content.findings())));
    return facts;
  }

  private static String counted(int n, String what) {
    return n == 0 ? "none " + what : n + Figures.NBSP + what;
  }

  private static String checks(List<Finding> findings) {
    if (findings.isEmpty()) {
      return "none were run for this report";
    }
    long stops = open(findings, Severity.STOPS_RELEASE);
    long reasons = open(findings, Severity.NEEDS_REASON);
    long passed = findings.stream().filter(f -> f.outcome() == Outcome.PASSED).count();
    return (stops == 0
            ? "nothing stops release"
            : stops + (stops == 1 ? " stops" : " stop") + " release")
        + ", "
        + reasons
        + (reasons == 1 ? " needs" : " need")
        + " a written reason, "
        + passed
        + " passed";
  }

  private static long open(List<Finding> findings, Severity severity) {
    return findings.stream()
        .filter(f -> f.outcome() != Outcome.PASSED && f.severity() == severity)
        .count();
  }

  private static String cssSafe(String text) {
    return text.replaceAll("[^A-Za-z0-9 .,·_-]", "").strip();
  }
}
