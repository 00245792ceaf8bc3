package fettle.report;

import fettle.curve.CurveIdentity;
import fettle.policy.DecisionRule;
import fettle.policy.ErrorLimits;
import fettle.policy.Limit;
import fettle.policy.Policy;
import fettle.policy.TypeB;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** What the curve is for, under which policy, and who has answered for it. */
final class IdentitySection {
  private IdentitySection() {}

  /**
   * What the template shows.
   *
   * @param facts identity
   * @param policy policy in force
   * @param examplePolicy whether the policy calls itself an example
   * @param limits limits that replace the checks' own
   * @param steps who answered for what
   */
  public record View(
      List<Fact> facts,
      List<Fact> policy,
      boolean examplePolicy,
      List<LimitRow> limits,
      List<StepRow> steps) {}

  /**
   * One limit.
   *
   * @param check id of the check
   * @param value the limit
   * @param citation origin
   * @param enteredBy person and day
   */
  public record LimitRow(String check, String value, String citation, String enteredBy) {}

  /**
   * One signed step.
   *
   * @param step what
   * @param person who
   * @param on when
   * @param reason why
   */
  public record StepRow(String step, String person, String on, String reason) {}

  static View of(ReportContent content) {
    Policy policy = content.analysis().campaign().dossier().policy();
    List<LimitRow> limits = new ArrayList<>();
    for (Map.Entry<String, Limit> entry : new TreeMap<>(policy.limits()).entrySet()) {
      Limit limit = entry.getValue();
      limits.add(
          new LimitRow(
              entry.getKey(),
              Figures.given(limit.value()),
              limit.citation(),
              limit.enteredBy() + ", " + limit.on()));
    }
    List<StepRow> steps =
        content.steps().stream()
            .map(s -> new StepRow(s.step(), s.person(), s.on().toString(), s.reason().orElse("")))
            .toList();
    return new View(facts(content), policyFacts(content), policy.example(), limits, steps);
  }

  private static List<Fact> facts(ReportContent content) {
    CurveIdentity identity = content.analysis().campaign().dossier().identity();
    List<Fact> facts = new ArrayList<>();
    Fact.addIfPresent(facts, "Laboratory", content.laboratory());
    facts.add(new Fact("Dossier", identity.dossier()));
    Fact.addIfPresent(facts, "Title", identity.title());
    facts.add(new Fact("Material family", identity.material()));
    facts.add(new Fact("Hardness scale", identity.scale().symbol().replace(" ", Figures.NBSP)));
    facts.add(new Fact("Method", identity.method().title()));
    facts.add(new Fact("Response", response(identity)));
    if (identity.testForceNewtons().isPresent()) {
      facts.add(
          new Fact(
              "Test force of the probe",
              Figures.given(identity.testForceNewtons().getAsDouble()) + Figures.NBSP + "N"));
    }
    if (identity.zeroFrequencyHz().isPresent()) {
      facts.add(
          new Fact(
              "Zero frequency",
              Figures.given(identity.zeroFrequencyHz().getAsDouble()) + Figures.NBSP + "Hz"));
    }
    facts.add(Fact.orUnstated("Instrument", identity.instrument()));
    facts.add(Fact.orUnstated("Probe or impact device", identity.probe()));
    facts.add(
        new Fact(
            "State", content.state() + content.version().map(n -> ", version " + n).orElse("")));
    facts.add(new Fact("Date of this report", content.date().toString()));
    facts.add(new Fact("Made by", content.programVersion()));
    return facts;
  }

  private static String response(CurveIdentity identity) {
    String unit = identity.responseKind().unit();
    return identity.responseKind().title() + (unit.equals("1") ? "" : ", in " + unit);
  }

  private static List<Fact> policyFacts(ReportContent content) {
    Policy policy = content.analysis().campaign().dossier().policy();
    Units units = Units.of(content.analysis().campaign().dossier().identity());
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact("Policy", policy.title()));
    facts.add(
        Fact.orUnstated(
            "Target for the expanded uncertainty of the curve",
            policy.targetUncertainty().map(limits -> text(limits, units))));
    facts.add(
        Fact.orUnstated(
            "Largest permissible error",
            policy.permissibleError().map(limits -> text(limits, units))));
    facts.add(Fact.orUnstated("Decision rule", policy.decisionRule().map(IdentitySection::text)));
    facts.add(new Fact("Stated influences on the response", text(policy.typeB())));
    facts.add(
        Fact.orUnstated(
            "Resolution of the response",
            optional(policy.responseResolution()).map(r -> units.ofResponse(Figures.given(r)))));
    if (policy.reverificationDays().isPresent() || policy.reverificationUses().isPresent()) {
      facts.add(new Fact("Reverification", interval(policy)));
    }
    Fact.addIfPresent(facts, "Origin of targets and rule", policy.origin());
    return facts;
  }

  private static Optional<Double> optional(OptionalDouble value) {
    return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
  }

  private static String interval(Policy policy) {
    List<String> parts = new ArrayList<>();
    policy.reverificationDays().ifPresent(days -> parts.add(days + Figures.NBSP + "days"));
    policy.reverificationUses().ifPresent(uses -> parts.add(uses + Figures.NBSP + "uses"));
    return "every " + String.join(" or ", parts) + (parts.size() > 1 ? ", whichever is first" : "");
  }

  /** Limits by hardness in words. */
  static String text(ErrorLimits limits, Units units) {
    List<String> parts = new ArrayList<>();
    List<ErrorLimits.Step> steps = limits.steps();
    for (int i = 0; i < steps.size(); i++) {
      ErrorLimits.Step step = steps.get(i);
      String value =
          step.relative()
              ? Figures.given(
                      new BigDecimal(Double.toString(step.value())).movePointRight(2).doubleValue())
                  + Figures.NBSP
                  + "% of the hardness"
              : units.ofHardness(Figures.given(step.value()));
      if (steps.size() == 1) {
        parts.add(value);
      } else if (i < steps.size() - 1) {
        parts.add(value + " up to " + units.ofHardness(Figures.given(step.upTo())));
      } else {
        parts.add(value + " above");
      }
    }
    return String.join("; ", parts);
  }

  private static String text(DecisionRule rule) {
    String band =
        rule.guardBandFactor() == 0
            ? "simple acceptance, no guard band"
            : "guard band of " + Figures.given(rule.guardBandFactor()) + Figures.NBSP + "U";
    return band
        + (rule.limitsAlreadyGuarded()
            ? "; the limits already allow for measurement uncertainty"
            : "");
  }

  private static String text(TypeB typeB) {
    List<String> parts = new ArrayList<>();
    add(parts, "run", typeB.run());
    add(parts, "operator", typeB.operator());
    add(parts, "drift", typeB.drift());
    add(parts, "temperature", typeB.temperature());
    return parts.isEmpty()
        ? "none"
        : String.join(", ", parts) + " (relative standard uncertainties)";
  }

  private static void add(List<String> parts, String name, OptionalDouble value) {
    value.ifPresent(u -> parts.add(name + Figures.NBSP + Figures.percent(u) + Figures.NBSP + "%"));
  }
}
