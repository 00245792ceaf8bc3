package fettle.cli;

import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.calibration.Candidate;
import fettle.calibration.CandidateFit;
import fettle.calibration.CheckBlockResult;
import fettle.calibration.ChosenCurve;
import fettle.calibration.ModelChoice;
import fettle.calibration.ResponseVariance;
import fettle.curve.BudgetLine;
import fettle.curve.CurveEvaluator;
import fettle.curve.HardnessEstimate;
import fettle.curve.ValidRange;
import fettle.fit.CurveFit;
import fettle.quantity.UncertaintyRounding;
import fettle.uncertainty.BetweenBlockScatter;
import fettle.uncertainty.PredictedBlock;
import java.io.IOException;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;

/**
 * A dossier's fit as JSON or as text.
 *
 * @param analysis the analysis
 * @param at responses at which predictions are wanted
 */
record DossierFitOutput(Analysis analysis, double[] at) {
  /** Readings on a test piece in the budget shown. */
  private static final int READINGS = 5;

  private String dossier() {
    return analysis.campaign().dossier().identity().dossier();
  }

  private boolean ordinal() {
    return analysis.campaign().dossier().identity().scale().isOrdinal();
  }

  String json() {
    return JsonOut.object(
        json -> {
          json.put("dossier", dossier());
          recommended(json);
          if (analysis.chosen().isPresent()) {
            json.put("chosen", analysis.chosen().get().curve().model().name());
          } else {
            json.putNull("chosen");
          }
          json.putArray("candidates", this::candidates);
          responseScatter(json);
          if (analysis.chosen().isPresent()) {
            chosen(json, analysis.chosen().get());
          } else {
            json.putNull("range");
          }
        });
  }

  private void recommended(JsonOut json) throws IOException {
    var recommendation = analysis.recommendation();
    if (recommendation.model().isPresent()) {
      json.putObject(
          "recommended",
          one ->
              one.put("model", recommendation.model().get().name())
                  .put("reason", recommendation.reason()));
    } else {
      json.putNull("recommended").put("noRecommendation", recommendation.reason());
    }
  }

  private void candidates(JsonOut list) throws IOException {
    for (Candidate candidate : analysis.candidates()) {
      list.addObject(
          one -> {
            one.put("model", candidate.model().name())
                .put("parameters", candidate.model().parameterCount());
            if (candidate.fit().isPresent()) {
              CandidateFit fit = candidate.fit().get();
              one.put("chiSquared", fit.scatter().atZero().chiSquared())
                  .put("degreesOfFreedom", fit.scatter().atZero().degreesOfFreedom())
                  .put("upperTailProbability", fit.upperTail())
                  .put("aicc", fit.aicc())
                  .put("leaveOneOutRms", fit.leaveOneOutRms())
                  .put("leaveOneOutStandardError", fit.leaveOneOutStandardError())
                  .put("betweenBlock", fit.scatter().restricted())
                  .put("gamma", fit.gamma())
                  .put("topCoefficientT", fit.topT())
                  .put("conditionNumber", fit.chosen().conditionNumber())
                  .put("monotone", fit.monotonicity().isProven());
            } else {
              one.putNull("chiSquared")
                  .putNull("aicc")
                  .putNull("leaveOneOutRms")
                  .putNull("monotone");
            }
            one.put("refusal", candidate.refusal());
          });
    }
  }

  private void responseScatter(JsonOut json) throws IOException {
    ResponseVariance variance = analysis.variance();
    json.putObject(
        "responseScatter",
        one ->
            one.put("relative", variance.relative())
                .put("repeatability", variance.repeatability())
                .put("degreesOfFreedom", variance.degreesOfFreedom())
                .put("blockRun", variance.blockRun())
                .put("runs", variance.runs().size())
                .put("run", variance.run())
                .put("runEstimated", variance.runEstimated()));
  }

  private void chosen(JsonOut json, ChosenCurve chosen) throws IOException {
    ValidRange range = chosen.curve().range();
    json.putObject(
        "range",
        one ->
            one.put("responseLow", range.responseLow())
                .put("responseHigh", range.responseHigh())
                .put("hardnessLow", range.hardnessLow())
                .put("hardnessHigh", range.hardnessHigh())
                .put("lowLimitedBy", range.lowLimitedBy())
                .put("highLimitedBy", range.highLimitedBy()));
    if (chosen.choice().isPresent()) {
      ModelChoice choice = chosen.choice().get();
      json.putObject("choice", one -> one.put("by", choice.by()).put("reason", choice.reason()));
    }
    CandidateFit candidate = chosen.fit();
    CurveFit fit = candidate.chosen();
    json.put("model", fit.model().id());
    CurveJson.coefficients(json, fit);
    BetweenBlockScatter scatter = candidate.scatter();
    json.put("residualStandardDeviation", fit.residualStandardDeviation(analysis.points()))
        .put("degreesOfFreedom", fit.degreesOfFreedom())
        .put("chiSquared", scatter.atZero().chiSquared())
        .put("converged", true)
        .put("iterations", fit.iterations())
        .put("conditionNumber", fit.conditionNumber())
        .put("monotone", candidate.monotonicity().isProven())
        .put("monotoneShare", chosen.monotoneShare());
    CurveJson.betweenBlock(json, scatter);
    json.putArray("points", list -> points(list, candidate));
    json.putArray("predictions", list -> predictions(list, chosen));
    json.putArray("checkBlocks", list -> checkBlocks(list, chosen.checkBlocks()));
    json.putArray("budget", list -> budget(list, chosen));
  }

  private void points(JsonOut list, CandidateFit candidate) throws IOException {
    List<BlockResponse> blocks = analysis.fittingBlocks();
    CurveFit fit = candidate.chosen();
    for (int i = 0; i < blocks.size(); i++) {
      BlockResponse block = blocks.get(i);
      double fitted = fit.fitted()[i];
      PredictedBlock predicted = candidate.predicted().get(i);
      list.addObject(
          one ->
              one.put("block", block.block().id())
                  .put("response", block.mean())
                  .put("hardness", block.certificate().certified())
                  .put("fitted", fitted)
                  .put("deviation", fitted - block.certificate().certified())
                  .put("readings", block.count())
                  .put("standardDeviation", block.standardDeviation())
                  .put("predictedByOthers", predicted.predicted())
                  .put("predictedDeviation", predicted.error())
                  .put("z", predicted.z())
                  .put("extrapolated", predicted.extrapolated()));
    }
  }

  private void predictions(JsonOut list, ChosenCurve chosen) throws IOException {
    CurveEvaluator evaluator = chosen.curve().evaluator();
    for (double response : at) {
      HardnessEstimate estimate = evaluator.curveAt(response);
      list.addObject(
          one ->
              one.put("response", response)
                  .put("hardness", estimate.hardness())
                  .put("standardUncertainty", estimate.standardUncertainty())
                  .put("coverageFactor", estimate.coverageFactor())
                  .put("expandedUncertainty", estimate.expandedUncertainty())
                  .put("simultaneousHalfWidth", evaluator.simultaneousHalfWidth(response))
                  .put("status", chosen.curve().range().statusOf(response).text()));
    }
  }

  private static void checkBlocks(JsonOut list, List<CheckBlockResult> results) throws IOException {
    for (CheckBlockResult result : results) {
      list.addObject(
          one -> {
            one.put("block", result.block().block().id())
                .put("status", result.status().text())
                .put("response", result.block().mean())
                .put("certified", result.block().certificate().certified())
                .put("hardness", result.hardness())
                .put("deviation", result.deviation())
                .put("expandedUncertainty", result.expandedUncertainty())
                .put("en", result.en())
                .put("permissibleError", result.permissibleError());
            one.put("conformity", result.conformity().map(verdict -> verdict.text()))
                .put("conformityProbability", result.conformityProbability());
          });
    }
  }

  private static void budget(JsonOut list, ChosenCurve chosen) throws IOException {
    CurveEvaluator evaluator = chosen.curve().evaluator();
    ValidRange range = chosen.curve().range();
    double middle = 0.5 * (range.responseLow() + range.responseHigh());
    for (double response : new double[] {range.responseLow(), middle, range.responseHigh()}) {
      HardnessEstimate result = evaluator.resultAt(response, READINGS, Double.NaN);
      list.addObject(
          one ->
              one.put("response", response)
                  .put("hardness", result.hardness())
                  .put("readings", READINGS)
                  .put("standardUncertainty", result.standardUncertainty())
                  .put("coverageFactor", result.coverageFactor())
                  .put("expandedUncertainty", result.expandedUncertainty())
                  .putArray(
                      "lines",
                      lines -> {
                        for (BudgetLine line : evaluator.budget(response, READINGS, Double.NaN)) {
                          lines.addObject(
                              each ->
                                  each.put("source", line.source())
                                      .put("part", line.part().name().toLowerCase(Locale.ROOT))
                                      .put("standardUncertainty", line.standardUncertainty())
                                      .put("present", line.present()));
                        }
                      }));
    }
  }

  void print(PrintStream out) {
    out.println(dossier());
    ResponseVariance variance = analysis.variance();
    line(
        out,
        "  Repeatability of one reading %s, pooled from %.0f degrees of freedom; run effect %s.",
        size(variance.repeatability(), variance.relative()),
        variance.degreesOfFreedom(),
        runText(variance));
    out.println();
    line(
        out,
        "  %-18s %2s %10s %8s %8s %10s %9s  %s",
        "model",
        "p",
        "chi-sq/df",
        "p-value",
        "AICc",
        "left-out",
        "tau",
        "");
    for (Candidate candidate : analysis.candidates()) {
      candidate(out, candidate);
    }
    out.println();
    out.println("  " + analysis.recommendation().reason());
    if (analysis.chosen().isEmpty()) {
      out.println("  No draft was kept.");
      return;
    }
    ChosenCurve chosen = analysis.chosen().get();
    chosen
        .choice()
        .ifPresent(
            choice ->
                out.println(
                    "  "
                        + choice.model()
                        + " was chosen by "
                        + choice.by()
                        + ": "
                        + choice.reason()));
    ValidRange range = chosen.curve().range();
    String unit = analysis.campaign().dossier().identity().scale().symbol();
    line(
        out,
        "  Range: response %.1f to %.1f, hardness %.1f to %.1f %s (%s; %s).",
        range.responseLow(),
        range.responseHigh(),
        range.hardnessLow(),
        range.hardnessHigh(),
        unit,
        range.lowLimitedBy(),
        range.highLimitedBy());
    CurveEvaluator evaluator = chosen.curve().evaluator();
    double middle = 0.5 * (range.responseLow() + range.responseHigh());
    for (double response : new double[] {range.responseLow(), middle, range.responseHigh()}) {
      estimate(
          out,
          response,
          evaluator.resultAt(response, READINGS, Double.NaN),
          unit,
          "mean of " + READINGS + " readings");
    }
    for (double response : at) {
      estimate(out, response, evaluator.curveAt(response), unit, "the curve itself");
    }
  }

  private static void estimate(
      PrintStream out, double response, HardnessEstimate estimate, String unit, String what) {
    UncertaintyRounding rounded =
        UncertaintyRounding.of(estimate.hardness(), estimate.expandedUncertainty());
    line(
        out,
        "  At %.1f: (%s ± %s) %s, k = %.2f (%s).",
        response,
        rounded.valueText(),
        rounded.uncertaintyText(),
        unit,
        estimate.coverageFactor(),
        what);
  }

  private void candidate(PrintStream out, Candidate candidate) {
    String refusal = candidate.refusal().map(reason -> "refused: " + reason).orElse("");
    if (candidate.fit().isEmpty()) {
      line(out, "  %-18s %2d %s", candidate.model(), candidate.model().parameterCount(), refusal);
      return;
    }
    CandidateFit fit = candidate.fit().get();
    line(
        out,
        "  %-18s %2d %7.2f/%-2d %8.3g %8s %10.3g %9s  %s",
        candidate.model(),
        candidate.model().parameterCount(),
        fit.scatter().atZero().chiSquared(),
        fit.scatter().atZero().degreesOfFreedom(),
        fit.upperTail(),
        fit.aicc().isPresent() ? String.format(Locale.ROOT, "%.2f", fit.aicc().getAsDouble()) : "-",
        fit.leaveOneOutRms(),
        size(fit.scatter().restricted(), !ordinal()),
        refusal);
  }

  private static String runText(ResponseVariance variance) {
    if (variance.runEstimated()) {
      return size(variance.run(), variance.relative())
          + " from "
          + variance.runs().size()
          + " runs";
    }
    return variance.run() > 0
        ? size(variance.run(), variance.relative()) + " from the policy"
        : "not estimable from " + variance.runs().size() + " runs and not stated";
  }

  private static String size(double value, boolean relative) {
    return relative
        ? String.format(Locale.ROOT, "%.2f %%", 100 * value)
        : String.format(Locale.ROOT, "%.3g", value);
  }

  private static void line(PrintStream out, String format, Object... values) {
    out.println(String.format(Locale.ROOT, format, values).stripTrailing());
  }
}
