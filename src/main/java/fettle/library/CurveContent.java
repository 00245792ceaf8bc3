package fettle.library;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.calibration.Analysis;
import fettle.calibration.CandidateFit;
import fettle.calibration.ChosenCurve;
import fettle.curve.CovariancePart;
import fettle.curve.Curve;
import fettle.curve.PosteriorNode;
import fettle.curve.ResponseScatter;
import fettle.curve.RunEffects;
import fettle.curve.SharedSource;
import fettle.curve.ValidRange;
import fettle.fit.ReportedCoefficients;
import fettle.uncertainty.BetweenBlockScatter;
import java.util.List;

/**
 * What of a curve is hashed: all its numbers, the choice of its model and the fingerprints of its
 * inputs; no time and no program version. Matrices are p × p row-major.
 */
final class CurveContent {
  private CurveContent() {}

  static ObjectNode of(Analysis analysis, List<InputFingerprint> inputs) {
    ChosenCurve chosen = analysis.chosen().orElseThrow();
    Curve curve = chosen.curve();
    ObjectNode content = Json.object();
    content.set("identity", IdentityJson.write(curve.identity()));
    content.put("model", curve.model().name());
    content.set("choice", choice(analysis, chosen));
    ObjectNode argument = content.putObject("argument");
    argument.put("logarithmic", curve.argument().logarithmic());
    put(argument, "centre", curve.argument().centre());
    put(argument, "scale", curve.argument().scale());
    content.set("parameters", Json.numbers(curve.beta()));
    content.set("covariance", Json.numbers(curve.covariance()));
    content.set("coefficients", coefficients(chosen.fit().chosen().reported()));
    content.set("betweenBlock", betweenBlock(curve, chosen.fit().scatter()));
    ArrayNode shared = content.putArray("sharedSources");
    for (SharedSource source : curve.sharedSources()) {
      ObjectNode node = shared.addObject().put("name", source.name());
      node.set("deltaParameters", Json.numbers(source.deltaBeta()));
    }
    content.set("runs", runs(curve.runs()));
    content.set("responseScatter", scatter(curve.scatter()));
    ArrayNode parts = content.putArray("covarianceParts");
    for (CovariancePart part : curve.parts()) {
      ObjectNode node = parts.addObject().put("source", part.source());
      node.put("present", part.present());
      node.set("covariance", Json.numbers(part.covariance()));
    }
    put(content, "simultaneousFactor", curve.simultaneousFactor());
    content.set("range", range(curve.range()));
    content.set("agreement", agreement(chosen));
    ArrayNode list = content.putArray("inputs");
    for (InputFingerprint input : inputs) {
      list.addObject()
          .put("kind", input.kind())
          .put("name", input.name())
          .put("sha256", input.sha256());
    }
    return content;
  }

  private static void put(ObjectNode node, String name, double value) {
    node.set(name, Json.number(value));
  }

  private static ObjectNode choice(Analysis analysis, ChosenCurve chosen) {
    ObjectNode node = Json.object();
    analysis.recommendation().model().ifPresent(model -> node.put("recommended", model.name()));
    node.put("recommendation", analysis.recommendation().reason());
    chosen.choice().ifPresent(one -> node.put("by", one.by()).put("reason", one.reason()));
    return node;
  }

  private static ObjectNode coefficients(ReportedCoefficients reported) {
    ObjectNode node = Json.object();
    ArrayNode list = node.putArray("values");
    double[] values = reported.values();
    for (int k = 0; k < values.length; k++) {
      ObjectNode one = list.addObject().put("name", reported.names().get(k));
      put(one, "value", values[k]);
      put(one, "standardUncertainty", reported.standardUncertainty(k));
    }
    node.set("covariance", Json.numbers(reported.covariance()));
    return node;
  }

  private static ObjectNode betweenBlock(Curve curve, BetweenBlockScatter estimate) {
    ObjectNode node = Json.object();
    node.put("relative", curve.scatterRelative());
    put(node, "tau", curve.tau());
    put(node, "profileLow", estimate.low());
    if (Double.isFinite(estimate.high())) {
      put(node, "profileHigh", estimate.high());
    }
    ArrayNode nodes = node.putArray("nodes");
    for (PosteriorNode one : curve.nodes()) {
      ObjectNode entry = nodes.addObject();
      put(entry, "weight", one.weight());
      put(entry, "tau", one.tau());
      entry.set("parameters", Json.numbers(one.beta()));
      entry.set("covariance", Json.numbers(one.covariance()));
    }
    return node;
  }

  private static ObjectNode runs(RunEffects runs) {
    ObjectNode node = Json.object();
    node.put("relative", runs.relative());
    put(node, "standardDeviation", runs.standardDeviation());
    node.put("estimated", runs.estimated());
    ArrayNode delta = node.putArray("deltaParameters");
    runs.deltaBeta().forEach(change -> delta.add(Json.numbers(change)));
    ArrayNode nodes = node.putArray("nodes");
    for (RunEffects.Node one : runs.nodes()) {
      ObjectNode entry = nodes.addObject();
      put(entry, "weight", one.weight());
      put(entry, "standardDeviation", one.standardDeviation());
    }
    return node;
  }

  private static ObjectNode scatter(ResponseScatter scatter) {
    ObjectNode node = Json.object();
    node.put("relative", scatter.relative());
    put(node, "repeatability", scatter.repeatability());
    put(node, "degreesOfFreedom", scatter.degreesOfFreedom());
    put(node, "resolution", scatter.resolution());
    put(node, "operator", scatter.operator());
    put(node, "drift", scatter.drift());
    put(node, "temperature", scatter.temperature());
    return node;
  }

  private static ObjectNode range(ValidRange range) {
    ObjectNode node = Json.object();
    put(node, "responseLow", range.responseLow());
    put(node, "responseHigh", range.responseHigh());
    put(node, "hardnessLow", range.hardnessLow());
    put(node, "hardnessHigh", range.hardnessHigh());
    node.put("lowLimitedBy", range.lowLimitedBy());
    node.put("highLimitedBy", range.highLimitedBy());
    return node;
  }

  private static ObjectNode agreement(ChosenCurve chosen) {
    CandidateFit fit = chosen.fit();
    ObjectNode node = Json.object();
    put(node, "chiSquared", fit.scatter().atZero().chiSquared());
    node.put("degreesOfFreedom", fit.scatter().atZero().degreesOfFreedom());
    put(node, "gamma", fit.gamma());
    put(node, "leaveOneOutRms", fit.leaveOneOutRms());
    put(node, "monotoneShare", chosen.monotoneShare());
    return node;
  }
}
