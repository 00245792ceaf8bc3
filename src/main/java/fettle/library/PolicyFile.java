package fettle.library;

import fettle.policy.DecisionRule;
import fettle.policy.ErrorLimits;
import fettle.policy.Limit;
import fettle.policy.Policy;
import fettle.policy.TypeB;
import fettle.refusal.InputRefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads a policy file, JSON format {@code fettle-policy}, number 1.
 *
 * <pre>
 *   {"format": "fettle-policy", "formatVersion": 1, "title": …, "example": true|false,
 *    "targetUncertainty": {"steps": [{"upTo": …, "relative": … or "absolute": …}], citation …},
 *    "permissibleError":  likewise,
 *    "decisionRule": {"guardBandFactor": …, "limitsAlreadyGuarded": …, citation …},
 *    "typeB": {"run"|"operator"|"drift"|"temperature": {"relative": …, citation …}},
 *    "responseResolution": {"value": …, …}, "largestHardnessStep": {"value": …, …},
 *    "intervals": {"reverificationDays": …, "reverificationUses": …, …},
 *    "limits": {check id: {"limit": …, …}}}
 * </pre>
 *
 * <p>Everything that limits or adds carries {@code citation}, {@code enteredBy} and {@code on}.
 */
final class PolicyFile {
  private static final String FORMAT = "fettle-policy";
  private static final List<String> TOP =
      List.of(
          "format",
          "formatVersion",
          "title",
          "example",
          "targetUncertainty",
          "permissibleError",
          "decisionRule",
          "typeB",
          "responseResolution",
          "largestHardnessStep",
          "intervals",
          "limits");

  private PolicyFile() {}

  /**
   * Reads a policy.
   *
   * @param bytes content
   * @param file name for messages
   * @throws InputRefusedException if anything in it cannot be used
   */
  static Policy read(byte[] bytes, String file) {
    Fields top = new Fields(Json.read(bytes, file), file);
    Json.requireFormat(top.object(), FORMAT, 1, file);
    top.allow(TOP);
    Optional<Fields> intervals = top.optionalObject("intervals");
    intervals.ifPresent(fields -> sourced(fields, "reverificationDays", "reverificationUses"));
    return new Policy(
        top.text("title"),
        top.flag("example", false),
        top.optionalObject("targetUncertainty").map(PolicyFile::errorLimits),
        top.optionalObject("permissibleError").map(PolicyFile::errorLimits),
        top.optionalObject("decisionRule").map(PolicyFile::rule),
        top.optionalObject("typeB").map(PolicyFile::typeB).orElse(TypeB.NONE),
        positive(top, "responseResolution"),
        positive(top, "largestHardnessStep"),
        intervals
            .map(fields -> fields.optionalWhole("reverificationDays"))
            .orElse(java.util.OptionalInt.empty()),
        intervals
            .map(fields -> fields.optionalWhole("reverificationUses"))
            .orElse(java.util.OptionalInt.empty()),
        top.optionalObject("limits").map(PolicyFile::limits).orElse(Map.of()),
        top.optionalObject("permissibleError")
            .map(fields -> fields.text("citation") + ", entered by " + fields.text("enteredBy")));
  }

  /** Every decision says where it comes from, who entered it and when. */
  private static LocalDate sourced(Fields fields, String... own) {
    List<String> allowed = new ArrayList<>(List.of("citation", "enteredBy", "on"));
    allowed.addAll(List.of(own));
    fields.allow(allowed);
    fields.text("citation");
    fields.text("enteredBy");
    return fields
        .optionalDate("on")
        .orElseThrow(() -> fields.refusal("on", "The date of entry is missing.", "yyyy-mm-dd"));
  }

  private static OptionalDouble positive(Fields top, String name) {
    Optional<Fields> fields = top.optionalObject(name);
    if (fields.isEmpty()) {
      return OptionalDouble.empty();
    }
    sourced(fields.get(), "value");
    return OptionalDouble.of(above(fields.get(), "value"));
  }

  private static double above(Fields fields, String name) {
    double value = fields.number(name);
    if (!(value > 0)) {
      throw fields.refusal(name, "The value " + value + " is not above 0.", "a number above 0");
    }
    return value;
  }

  private static ErrorLimits errorLimits(Fields fields) {
    sourced(fields, "steps");
    List<ErrorLimits.Step> steps = new ArrayList<>();
    for (Fields step : fields.objects("steps")) {
      step.allow(List.of("upTo", "relative", "absolute"));
      if (step.has("relative") == step.has("absolute")) {
        throw step.refusal(
            "relative",
            "A step needs either \"relative\" or \"absolute\".",
            "a fraction of the hardness, or a value in the scale's unit");
      }
      boolean relative = step.has("relative");
      double upTo = step.optionalNumber("upTo").orElse(Double.POSITIVE_INFINITY);
      if (!steps.isEmpty() && !(upTo > steps.get(steps.size() - 1).upTo())) {
        throw step.refusal("upTo", "The steps do not rise.", "a larger upTo in each step");
      }
      steps.add(
          new ErrorLimits.Step(upTo, relative, above(step, relative ? "relative" : "absolute")));
    }
    if (steps.isEmpty()) {
      throw fields.refusal("steps", "There is no step.", "at least one step");
    }
    return new ErrorLimits(steps);
  }

  private static DecisionRule rule(Fields fields) {
    sourced(fields, "guardBandFactor", "limitsAlreadyGuarded");
    double factor = fields.number("guardBandFactor");
    if (!(factor >= 0 && factor <= 3)) {
      throw fields.refusal(
          "guardBandFactor", "The factor " + factor + " is out of range.", "0 to 3 times U");
    }
    return new DecisionRule(factor, fields.flag("limitsAlreadyGuarded", false));
  }

  private static TypeB typeB(Fields fields) {
    fields.allow(List.of("run", "operator", "drift", "temperature"));
    return new TypeB(
        component(fields, "run"),
        component(fields, "operator"),
        component(fields, "drift"),
        component(fields, "temperature"));
  }

  private static OptionalDouble component(Fields fields, String name) {
    Optional<Fields> component = fields.optionalObject(name);
    if (component.isEmpty()) {
      return OptionalDouble.empty();
    }
    sourced(component.get(), "relative");
    double value = component.get().number("relative");
    if (!(value >= 0 && value < 0.5)) {
      throw component
          .get()
          .refusal(
              "relative",
              "The value " + value + " is out of range.",
              "a relative standard uncertainty such as 0.004 for 0.4 %");
    }
    return OptionalDouble.of(value);
  }

  private static Map<String, Limit> limits(Fields fields) {
    Map<String, Limit> limits = new LinkedHashMap<>();
    for (Iterator<String> ids = fields.object().fieldNames(); ids.hasNext(); ) {
      String id = ids.next();
      Fields one = fields.optionalObject(id).orElseThrow();
      LocalDate on = sourced(one, "limit");
      limits.put(
          id, new Limit(one.number("limit"), one.text("citation"), one.text("enteredBy"), on));
    }
    return limits;
  }
}
