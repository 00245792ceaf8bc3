package fettle.cli;

import fettle.calibration.PairsCurve;
import fettle.curve.HardnessEstimate;
import fettle.fit.CurveFit;
import fettle.fit.Points;
import fettle.uncertainty.MonteCarloOutput;
import fettle.uncertainty.MonteCarloResult;
import fettle.uncertainty.PropagationCheck;
import fettle.uncertainty.ScatterScale;
import java.io.IOException;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A pairs fit as JSON or as text.
 *
 * @param file file as it was named in the call
 * @param curve the fit
 * @param at responses at which predictions are wanted
 * @param grid responses of the Monte Carlo grid
 * @param monteCarlo Monte Carlo, where asked for
 */
record PairsOutput(
    String file,
    PairsCurve curve,
    double[] at,
    double[] grid,
    Optional<MonteCarloResult> monteCarlo) {

  String json() {
    CurveFit fit = curve.fit();
    Points points = curve.points();
    return JsonOut.object(
        json -> {
          json.put("file", file).put("model", fit.model().id());
          CurveJson.coefficients(json, fit);
          json.put("residualStandardDeviation", fit.residualStandardDeviation(points))
              .put("degreesOfFreedom", fit.degreesOfFreedom())
              .put("chiSquared", chiSquared())
              .put("converged", true)
              .put("iterations", fit.iterations())
              .put("conditionNumber", fit.conditionNumber())
              .put("monotone", curve.monotonicity().isProven())
              .put("uncertaintiesStated", fit.uncertaintiesStated());
          if (curve.scatter().isPresent()) {
            CurveJson.betweenBlock(json, curve.scatter().get());
          }
          json.putArray("points", list -> points(list, points));
          json.putArray("predictions", this::predictions);
          if (monteCarlo.isPresent()) {
            monteCarlo(json, monteCarlo.get());
          }
        });
  }

  /** χ² as stated: with no between-block scatter in the weights. */
  private double chiSquared() {
    return curve
        .scatter()
        .map(scatter -> scatter.atZero().chiSquared())
        .orElse(curve.fit().chiSquared());
  }

  private void points(JsonOut list, Points points) throws IOException {
    double[] fitted = curve.fit().fitted();
    double[] adjusted = curve.fit().adjustedResponses();
    for (int i = 0; i < points.size(); i++) {
      int k = i;
      list.addObject(
          one ->
              one.put("response", points.response(k))
                  .put("hardness", points.hardness(k))
                  .put("fitted", fitted[k])
                  .put("deviation", fitted[k] - points.hardness(k))
                  .put("adjustedResponse", adjusted[k]));
    }
  }

  private void predictions(JsonOut list) throws IOException {
    for (double response : at) {
      HardnessEstimate estimate = curve.at(response);
      list.addObject(
          one ->
              one.put("response", response)
                  .put("hardness", estimate.hardness())
                  .put("standardUncertainty", estimate.standardUncertainty())
                  .put("coverageFactor", estimate.coverageFactor())
                  .put("expandedUncertainty", estimate.expandedUncertainty()));
    }
  }

  private void monteCarlo(JsonOut json, MonteCarloResult result) throws IOException {
    json.putObject(
        "monteCarlo",
        one ->
            one.put("trials", result.trials())
                .put("failed", result.failed())
                .put("seed", result.seed())
                .put("settled", result.settled())
                .putArray(
                    "grid",
                    list -> {
                      List<MonteCarloOutput> outputs = result.outputs();
                      for (int k = 0; k < outputs.size(); k++) {
                        MonteCarloOutput output = outputs.get(k);
                        double response = grid[k];
                        PropagationCheck check = check(response, output);
                        list.addObject(
                            point ->
                                point
                                    .put("response", response)
                                    .put("mean", output.mean())
                                    .put("standardUncertainty", output.standardUncertainty())
                                    .put("low", output.low())
                                    .put("high", output.high())
                                    .put("shortestLow", output.shortestLow())
                                    .put("shortestHigh", output.shortestHigh())
                                    .put("tolerance", check.tolerance())
                                    .put("lowDifference", check.lowDifference())
                                    .put("highDifference", check.highDifference())
                                    .put("validated", check.validated()));
                      }
                    }));
  }

  /** JCGM 101 clause 8 with one significant digit, as in its example 9.3. */
  private PropagationCheck check(double response, MonteCarloOutput output) {
    HardnessEstimate law = curve.at(response);
    return PropagationCheck.of(
        law.hardness(), law.standardUncertainty(), law.expandedUncertainty(), output, 1);
  }

  void print(PrintStream out) {
    CurveFit fit = curve.fit();
    var reported = fit.reported();
    out.println(file + ": " + fit.model().id());
    for (int k = 0; k < reported.values().length; k++) {
      line(
          out,
          "  %-4s %24.15g   standard uncertainty %.6g",
          reported.names().get(k),
          reported.values()[k],
          reported.standardUncertainty(k));
    }
    line(
        out,
        "  %s = %.6g with %d degrees of freedom; residual standard deviation %.6g",
        fit.uncertaintiesStated() ? "chi-squared" : "sum of squares",
        chiSquared(),
        fit.degreesOfFreedom(),
        fit.residualStandardDeviation(curve.points()));
    curve
        .scatter()
        .ifPresent(
            scatter ->
                line(
                    out,
                    "  between-block scatter %.4g (%s), 95 %% profile interval %.4g to %.4g",
                    scatter.restricted(),
                    scatter.scale() == ScatterScale.RELATIVE ? "relative" : "hardness units",
                    scatter.low(),
                    scatter.high()));
    if (!curve.monotonicity().isProven()) {
      out.println(
          "  The curve is not strictly monotone over the points: one response may have two"
              + " hardnesses.");
    }
    for (double response : at) {
      HardnessEstimate estimate = curve.at(response);
      line(
          out,
          "  at %.10g: hardness %.8g, U = %.4g (k = %.3f)",
          response,
          estimate.hardness(),
          estimate.expandedUncertainty(),
          estimate.coverageFactor());
    }
    monteCarlo.ifPresent(
        result ->
            line(
                out,
                "  Monte Carlo: %d trials, %d without a fit, seed %d; --json prints the grid",
                result.trials(),
                result.failed(),
                result.seed()));
  }

  private static void line(PrintStream out, String format, Object... values) {
    out.println(String.format(Locale.ROOT, format, values));
  }
}
