package fettle.library;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.calibration.Analysis;
import fettle.calibration.CandidateFit;
import fettle.calibration.ChosenCurve;
import fettle.curve.CovariancePart;
import fettle.curve.Curve;
import fettle.curve.CurveFile;
import fettle.curve.CurveIdentity;
import fettle.curve.PosteriorNode;
import fettle.curve.ResponseScatter;
import fettle.curve.RunEffects;
import fettle.curve.SharedSource;
import fettle.curve.ValidRange;
import fettle.fit.ReportedCoefficients;
import fettle.uncertainty.BetweenBlockScatter;
import java.util.List;

/**
 * The curve file as JSON. Its {@code content} holds all numbers and the fingerprints of all inputs,
 * no time and no program version; the fingerprint is the SHA-256 of the content's canonical bytes.
 */
final class CurveContent {
  private CurveContent() {}

  /** The whole file. */
  static ObjectNode file(ObjectNode content, String state, String program) {
    ObjectNode file = Json.object();
    file.put("format", CurveFile.FORMAT).put("formatVersion", CurveFile.FORMAT_VERSION);
    file.put("state", state).put("program", program);
    file.put("fingerprint", Json.sha256(Json.canonical(content)));
    file.set("content", content);
    return file;
  }

  /** What is hashed. */
  static ObjectNode content(Analysis analysis, List<InputFingerprint> inputs) {
    ChosenCurve chosen = analysis.chosen().orElseThrow();
    Curve curve = chosen.curve();
    ObjectNode content = Json.object();
    content.set("identity", identity(curve.identity()));
    content.put("model", curve.model().name());
    content.set("choice", choice(analysis));
    ObjectNode argument = content.putObject("argument");
    argument.put("logarithmic", curve.argument().logarithmic());
    argument.put("centre", curve.argument().centre()).put("scale", curve.argument().scale());
    numbers(content.putArray("parameters"), curve.beta());
    numbers(content.putArray("covariance"), curve.covariance());
    content.set("coefficients", coefficients(chosen.fit().chosen().reported()));
    content.set("betweenBlock", scatter(curve, chosen.fit().scatter()));
    ArrayNode shared = content.putArray("sharedSources");
    for (SharedSource source : curve.sharedSources()) {
      ObjectNode one = shared.addObject().put("name", source.name());
      numbers(one.putArray("deltaParameters"), source.deltaBeta());
    }
    content.set("runs", runs(curve.runs()));
    content.set("responseScatter", responseScatter(curve.scatter()));
    ArrayNode parts = content.putArray("covarianceParts");
    for (CovariancePart part : curve.parts()) {
      ObjectNode one = parts.addObject().put("source", part.source());
      one.put("present", part.present());
      numbers(one.putArray("covariance"), part.covariance());
    }
    content.put("simultaneousFactor", curve.simultaneousFactor());
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

  static ObjectNode identity(CurveIdentity identity) {
    ObjectNode node = Json.object();
    node.put("dossier", identity.dossier());
    identity.title().ifPresent(text -> node.put("title", text));
    node.put("material", identity.material());
    node.put("method", identity.method().id());
    node.put("scale", identity.scale().symbol());
    node.put("response", identity.responseKind().id());
    node.put("responseUnit", identity.responseKind().unit());
    identity.testForceNewtons().ifPresent(value -> node.put("testForceNewtons", value));
    identity.instrument().ifPresent(text -> node.put("instrument", text));
    identity.probe().ifPresent(text -> node.put("probe", text));
    identity.zeroFrequencyHz().ifPresent(value -> node.put("zeroFrequencyHz", value));
    return node;
  }

  private static ObjectNode choice(Analysis analysis) {
    ObjectNode node = Json.object();
    var choice = analysis.chosen().orElseThrow().choice();
    node.put(
        "recommended", analysis.recommendation().model().map(model -> model.name()).orElse(null));
    node.put("recommendation", analysis.recommendation().reason());
    if (choice.isPresent()) {
      node.put("by", choice.get().by()).put("reason", choice.get().reason());
    }
    return node;
  }

  private static ObjectNode coefficients(ReportedCoefficients reported) {
    ObjectNode node = Json.object();
    ArrayNode list = node.putArray("values");
    double[] values = reported.values();
    for (int k = 0; k < values.length; k++) {
      list.addObject()
          .put("name", reported.names().get(k))
          .put("value", values[k])
          .put("standardUncertainty", reported.standardUncertainty(k));
    }
    numbers(node.putArray("covariance"), reported.covariance());
    return node;
  }

  private static ObjectNode scatter(Curve curve, BetweenBlockScatter estimate) {
    ObjectNode node = Json.object();
    node.put("relative", curve.scatterRelative()).put("tau", curve.tau());
    node.put("profileLow", estimate.low());
    if (Double.isFinite(estimate.high())) {
      node.put("profileHigh", estimate.high());
    }
    ArrayNode nodes = node.putArray("nodes");
    for (PosteriorNode one : curve.nodes()) {
      ObjectNode entry = nodes.addObject().put("weight", one.weight()).put("tau", one.tau());
      numbers(entry.putArray("parameters"), one.beta());
      numbers(entry.putArray("covariance"), one.covariance());
    }
    return node;
  }

  private static ObjectNode runs(RunEffects runs) {
    ObjectNode node = Json.object();
    node.put("relative", runs.relative()).put("standardDeviation", runs.standardDeviation());
    node.put("estimated", runs.estimated());
    ArrayNode delta = node.putArray("deltaParameters");
    runs.deltaBeta().forEach(change -> numbers(delta.addArray(), change));
    ArrayNode nodes = node.putArray("nodes");
    for (RunEffects.Node one : runs.nodes()) {
      nodes
          .addObject()
          .put("weight", one.weight())
          .put("standardDeviation", one.standardDeviation());
    }
    return node;
  }

  private static ObjectNode responseScatter(ResponseScatter scatter) {
    return Json.object()
        .put("relative", scatter.relative())
        .put("repeatability", scatter.repeatability())
        .put("degreesOfFreedom", scatter.degreesOfFreedom())
        .put("resolution", scatter.resolution())
        .put("operator", scatter.operator())
        .put("drift", scatter.drift())
        .put("temperature", scatter.temperature());
  }

  private static ObjectNode range(ValidRange range) {
    return Json.object()
        .put("responseLow", range.responseLow())
        .put("responseHigh", range.responseHigh())
        .put("hardnessLow", range.hardnessLow())
        .put("hardnessHigh", range.hardnessHigh())
        .put("lowLimitedBy", range.lowLimitedBy())
        .put("highLimitedBy", range.highLimitedBy());
  }

  private static ObjectNode agreement(ChosenCurve chosen) {
    CandidateFit fit = chosen.fit();
    return Json.object()
        .put("chiSquared", fit.scatter().atZero().chiSquared())
        .put("degreesOfFreedom", fit.scatter().atZero().degreesOfFreedom())
        .put("gamma", fit.gamma())
        .put("leaveOneOutRms", fit.leaveOneOutRms())
        .put("monotoneShare", chosen.monotoneShare());
  }

  private static void numbers(ArrayNode list, double[] values) {
    for (double value : values) {
      // RFC 8785 writes −0 as 0; so does this, so that what is read back is what was written.
      list.add(value == 0 ? 0.0 : value);
    }
  }
}
