package fettle.cli;

import fettle.acceptance.Finding;
import fettle.acceptance.Verdict;
import fettle.block.BlockRole;
import fettle.calibration.Analysis;
import fettle.calibration.ChosenCurve;
import fettle.curve.CurveEvaluator;
import fettle.curve.HardnessEstimate;
import fettle.curve.ValidRange;
import fettle.demo.DemoTruth;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * What the demo made of one dossier.
 *
 * @param analysis the analysis behind the draft
 * @param truth the simulated truth
 * @param leftOut readings left out
 * @param verdict verdict of the checks
 * @param stopping findings that stop the release
 * @param reasons findings that need a written reason
 * @param draft folder of the draft
 */
record DemoOutcome(
    Analysis analysis,
    DemoTruth truth,
    int leftOut,
    Verdict verdict,
    List<Finding> stopping,
    List<Finding> reasons,
    Path draft) {
  private static final int PLACES = 21;
  private static final int READINGS = 5;

  private String name() {
    return analysis.campaign().dossier().identity().dossier();
  }

  private ChosenCurve chosen() {
    return analysis.chosen().orElseThrow();
  }

  private HardnessEstimate middle() {
    ValidRange range = chosen().curve().range();
    return chosen()
        .curve()
        .evaluator()
        .resultAt(0.5 * (range.responseLow() + range.responseHigh()), READINGS, Double.NaN);
  }

  /** At how many of 21 responses over the range the curve's interval holds the simulated truth. */
  private int held() {
    ValidRange range = chosen().curve().range();
    CurveEvaluator evaluator = chosen().curve().evaluator();
    int held = 0;
    for (int k = 0; k < PLACES; k++) {
      double response =
          range.responseLow() + k * (range.responseHigh() - range.responseLow()) / (PLACES - 1);
      HardnessEstimate estimate = evaluator.curveAt(response);
      double error = estimate.hardness() - truth.trueHardness(response);
      held += Math.abs(error) <= estimate.expandedUncertainty() ? 1 : 0;
    }
    return held;
  }

  static String json(List<DemoOutcome> outcomes) {
    return JsonOut.array(
        list -> {
          for (DemoOutcome outcome : outcomes) {
            ValidRange range = outcome.chosen().curve().range();
            list.addObject(
                one ->
                    one.put("dossier", outcome.name())
                        .put("model", outcome.chosen().curve().model().name())
                        .put("hardnessLow", range.hardnessLow())
                        .put("hardnessHigh", range.hardnessHigh())
                        .put(
                            "expandedUncertaintyInTheMiddle",
                            outcome.middle().expandedUncertainty())
                        .put("leftOut", outcome.leftOut())
                        .put("verdict", outcome.verdict().text())
                        .put("truthHeld", outcome.held())
                        .put("truthAsked", PLACES)
                        .put("draft", outcome.draft().toString())
                        .putArray(
                            "stopping",
                            findings -> {
                              for (Finding finding : outcome.stopping()) {
                                findings.add(finding.message());
                              }
                            }));
          }
        });
  }

  static void print(PrintStream out, List<DemoOutcome> outcomes) {
    out.println();
    line(
        out,
        "%-28s %6s %5s %-8s %15s %9s %8s  %-14s",
        "dossier",
        "blocks",
        "check",
        "model",
        "range",
        "U middle",
        "truth",
        "verdict");
    for (DemoOutcome outcome : outcomes) {
      ValidRange range = outcome.chosen().curve().range();
      HardnessEstimate middle = outcome.middle();
      line(
          out,
          "%-28s %6d %5d %-8s %6.1f to %5.1f %7.1f %% %5d/%d  %-14s",
          outcome.name(),
          outcome.analysis().fittingBlocks().size(),
          outcome.analysis().withRole(BlockRole.CHECK).size(),
          outcome.chosen().curve().model(),
          range.hardnessLow(),
          range.hardnessHigh(),
          100 * middle.expandedUncertainty() / middle.hardness(),
          outcome.held(),
          PLACES,
          outcome.verdict().text());
    }
    out.println(
        "U middle: expanded uncertainty of the mean of "
            + READINGS
            + " readings on a piece of the family; truth: at how many of "
            + PLACES);
    out.println("responses the curve's 95 % interval holds the hardness that was simulated.");
    out.println();
    out.println("What was found");
    for (DemoOutcome outcome : outcomes) {
      if (outcome.leftOut() > 0) {
        out.println(
            "  "
                + outcome.name()
                + ": "
                + outcome.leftOut()
                + " outlying reading left out for a cause noted when it was taken");
      }
      for (Finding finding : outcome.stopping()) {
        out.println("  " + outcome.name() + ": " + finding.message());
      }
    }
    out.println();
    for (DemoOutcome outcome : outcomes) {
      out.println("Draft and report: " + outcome.draft());
    }
    out.println();
    out.println("Simulated; never to be used for parts. " + Cautions.COMPARATIVE);
  }

  private static void line(PrintStream out, String format, Object... values) {
    out.println(String.format(Locale.ROOT, format, values).stripTrailing());
  }
}
