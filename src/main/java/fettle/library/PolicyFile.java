package fettle.library;

import fettle.policy.DecisionRule;
import fettle.policy.ErrorLimits;
import fettle.policy.Limit;
import fettle.policy.Policy;
import fettle.policy.TypeB;
import fettle.refusal.InputRefusedException;
import fettle.table.Shown;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The policy file: JSON of format {@code fettle-policy}, number 1.
 *
 * <pre>
 *   {"format": "fettle-policy", "formatVersion": 1, "title": …, "example": true|false,
 *    "targetUncertainty": {"steps": [{"upTo": …, "relative": … or "absolute": …}], origin},
 *    "permissibleError":  {"steps": …, origin},
 *    "decisionRule": {"guardBandFactor": …, "limitsAlreadyGuarded": …, origin},
 *    "typeB": {"run"|"operator"|"drift"|"temperature": {"relative": …, origin}},
 *    "responseResolution": {"value": …, origin}, "largestHardnessStep": {"value": …, origin},
 *    "intervals": {"reverificationDays": …, "reverificationUses": …, origin},
 *    "limits": {check id: {"limit": …, origin}}}
 *   origin: "citation": …, "enteredBy": …, "on": yyyy-mm-dd
 * </pre>
 *
 * <p>An unknown name is refused: a limit under a misspelt name would silently be no limit. The file
 * is kept as it came, so nothing here writes one.
 */
public final class PolicyFile {
  private static final String STEPS = "steps";
  private static final String UP_TO = "upTo";
  private static final String RELATIVE = "relative";
  private static final String ABSOLUTE = "absolute";
  private static final String VALUE = "value";

  private PolicyFile() {}

  /**
   * Reads a policy.
   *
   * @param bytes the file's bytes
   * @param file name of the file for messages
   * @return the policy
   * @throws InputRefusedException if anything in the file cannot be, with its JSON path
   */
  public static Policy read(byte[] bytes, String file) {
    StrictObject object = FileFormat.POLICY.read(bytes, file);
    Optional<StrictObject> intervals = object.optionalObject("intervals");
    Optional<StrictObject> permissible = object.optionalObject("permissibleError");
    Policy policy =
        new Policy(
            object.text("title"),
            object.has("example") && object.truth("example"),
            object.optionalObject("targetUncertainty").map(PolicyFile::errorLimits),
            permissible.map(PolicyFile::errorLimits),
            object.optionalObject("decisionRule").map(PolicyFile::rule),
            object.optionalObject("typeB").map(PolicyFile::typeB).orElse(TypeB.NONE),
            value(object.optionalObject("responseResolution")),
            value(object.optionalObject("largestHardnessStep")),
            count(intervals, "reverificationDays"),
            count(intervals, "reverificationUses"),
            object.optionalObject("limits").map(PolicyFile::limits).orElse(Map.of()),
            permissible.map(
                limits -> limits.text("citation") + ", entered by " + limits.text("enteredBy")));
    intervals.ifPresent(PolicyFile::requireOrigin);
    object.nothingElse();
    return policy;
  }

  /** Every decision says where it comes from, who entered it and when; and nothing else. */
  private static void requireOrigin(StrictObject object) {
    object.text("citation");
    object.text("enteredBy");
    object.date("on");
    object.nothingElse();
  }

  private static ErrorLimits errorLimits(StrictObject object) {
    List<StrictObject> objects = object.objects(STEPS);
    List<ErrorLimits.Step> steps = new ArrayList<>();
    double above = 0;
    for (int i = 0; i < objects.size(); i++) {
      ErrorLimits.Step step = step(objects.get(i), above, i == objects.size() - 1);
      above = step.upTo();
      steps.add(step);
    }
    if (steps.isEmpty()) {
      throw object.refusal(STEPS, "There is no step.", "at least one step");
    }
    requireOrigin(object);
    return new ErrorLimits(steps);
  }

  private static ErrorLimits.Step step(StrictObject step, double above, boolean last) {
    if (!last && !step.has(UP_TO)) {
      throw step.refusal(
          UP_TO,
          "A step that is not the last does not say how far it reaches.",
          "a hardness above " + shown(above));
    }
    double upTo = step.has(UP_TO) ? step.positive(UP_TO) : Double.POSITIVE_INFINITY;
    if (!(upTo > above)) {
      throw step.refusal(
          UP_TO,
          "upTo " + shown(upTo) + " does not lie above that of the step before.",
          "a hardness above " + shown(above));
    }
    boolean relative = step.has(RELATIVE);
    if (relative == step.has(ABSOLUTE)) {
      throw step.refusal(
          RELATIVE,
          relative
              ? "The step states relative and absolute."
              : "The step states neither relative nor absolute.",
          "relative, a fraction of the hardness, or absolute, in the scale's unit");
    }
    double value = step.positive(relative ? RELATIVE : ABSOLUTE);
    if (relative && value >= 1) {
      throw step.refusal(
          RELATIVE, "relative is " + shown(value) + ".", "a fraction below 1: 0.06 for 6 %");
    }
    step.nothingElse();
    return new ErrorLimits.Step(upTo, relative, value);
  }

  private static String shown(double value) {
    return Json.number(value).asText();
  }

  private static DecisionRule rule(StrictObject rule) {
    double factor = rule.number("guardBandFactor");
    if (!(factor >= 0 && factor <= 3)) {
      throw rule.refusal(
          "guardBandFactor", "guardBandFactor is " + shown(factor) + ".", "0 to 3 times U");
    }
    boolean guarded = rule.has("limitsAlreadyGuarded") && rule.truth("limitsAlreadyGuarded");
    requireOrigin(rule);
    return new DecisionRule(factor, guarded);
  }

  private static TypeB typeB(StrictObject object) {
    TypeB typeB =
        new TypeB(
            component(object.optionalObject("run")),
            component(object.optionalObject("operator")),
            component(object.optionalObject("drift")),
            component(object.optionalObject("temperature")));
    object.nothingElse();
    return typeB;
  }

  private static OptionalDouble component(Optional<StrictObject> component) {
    if (component.isEmpty()) {
      return OptionalDouble.empty();
    }
    double value = component.get().number(RELATIVE);
    if (!(value >= 0 && value < 0.5)) {
      throw component
          .get()
          .refusal(
              RELATIVE,
              "relative is " + shown(value) + ".",
              "a relative standard uncertainty from 0 to below 0.5: 0.004 for 0.4 %");
    }
    requireOrigin(component.get());
    return OptionalDouble.of(value);
  }

  private static OptionalDouble value(Optional<StrictObject> object) {
    if (object.isEmpty()) {
      return OptionalDouble.empty();
    }
    double value = object.get().positive(VALUE);
    requireOrigin(object.get());
    return OptionalDouble.of(value);
  }

  private static OptionalInt count(Optional<StrictObject> intervals, String name) {
    OptionalInt count =
        intervals.map(object -> object.optionalInteger(name)).orElse(OptionalInt.empty());
    if (count.isPresent() && count.getAsInt() < 1) {
      throw intervals
          .get()
          .refusal(name, name + " is " + count.getAsInt() + ".", "a whole number of 1 or more");
    }
    return count;
  }

  private static Map<String, Limit> limits(StrictObject object) {
    Map<String, Limit> limits = new LinkedHashMap<>();
    for (String id : object.names()) {
      if (!id.matches("[a-z0-9][a-z0-9-]{0,99}")) {
        throw object.refusal(
            id, Shown.quoted(id) + " cannot be a check.", "the id of a check, in lower case");
      }
      StrictObject limit = object.object(id);
      limits.put(
          id,
          new Limit(
              limit.number("limit"),
              limit.text("citation"),
              limit.text("enteredBy"),
              limit.date("on")));
      limit.nothingElse();
    }
    return limits;
  }
}
