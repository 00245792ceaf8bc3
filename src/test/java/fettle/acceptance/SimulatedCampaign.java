package fettle.acceptance;

import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.calibration.Calibration;
import fettle.calibration.Campaign;
import fettle.calibration.Dossier;
import fettle.calibration.ModelChoice;
import fettle.curve.CurveIdentity;
import fettle.fit.ModelId;
import fettle.policy.DecisionRule;
import fettle.policy.ErrorLimits;
import fettle.policy.Limit;
import fettle.policy.Policy;
import fettle.policy.TypeB;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import fettle.reading.Exclusion;
import fettle.reading.Reading;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/**
 * An invented campaign in an invented laboratory: titanium blocks B1 to B8 shape the curve, C1 to
 * C3 check it, steel block S1 proves the probe; four runs of three readings a block. The truth is a
 * power law, H = 250 (1552 Hz / r)^2.05, with the scatter below (orders of magnitude: common
 * practice, no source). Variants change one thing each; none of the checks is told.
 */
record SimulatedCampaign(
    CurveIdentity identity,
    Policy policy,
    List<ReferenceBlock> blocks,
    List<Reading> readings,
    List<Exclusion> exclusions,
    Optional<ModelChoice> choice) {
  static final LocalDate ASSESSED = LocalDate.of(2026, 4, 1);

  private static final HardnessScale HV10 = HardnessScale.parse("HV10", "here");
  private static final double[] FIT = {250, 275, 300, 325, 350, 380, 410, 440};
  private static final double[] CHECK = {265, 340, 425};
  private static final double STEEL_RESPONSE = 2530;
  private static final double ZERO = 78_000;
  private static final double SHARED = 0.008;
  private static final double OWN = 0.006;
  private static final double BETWEEN = 0.005;
  private static final double READING = 0.008;
  private static final double RUN = 0.002;

  private static SimulatedCampaign standard;
  private static Evidence standardEvidence;

  /** A campaign to which no check that stops a release objects. */
  static synchronized SimulatedCampaign good() {
    if (standard == null) {
      standard = simulate(20_260_302L);
    }
    return standard;
  }

  /** Its evidence, analysed once. */
  static synchronized Evidence goodEvidence() {
    if (standardEvidence == null) {
      standardEvidence = good().evidence();
    }
    return standardEvidence;
  }

  Evidence evidence() {
    Dossier dossier = new Dossier(identity, Map.of(), policy);
    return new Evidence(
        Calibration.analyse(new Campaign(dossier, blocks, readings, exclusions), choice), ASSESSED);
  }

  SimulatedCampaign identified(String component, Object value) {
    return With.component(this, "identity", With.component(identity, component, value));
  }

  SimulatedCampaign policed(String component, Object value) {
    return With.component(this, "policy", With.component(policy, component, value));
  }

  SimulatedCampaign limited(String id, double value) {
    return policed(
        "limits", Map.of(id, new Limit(value, "QP-7:2026, table 2", "A. Tester", ASSESSED)));
  }

  /** Changes one block, or all for the id "*". */
  SimulatedCampaign block(String id, UnaryOperator<ReferenceBlock> change) {
    return With.component(
        this,
        "blocks",
        blocks.stream()
            .map(b -> id.equals("*") || b.id().equals(id) ? change.apply(b) : b)
            .toList());
  }

  SimulatedCampaign block(String id, String component, Object value) {
    return block(id, b -> With.component(b, component, value));
  }

  SimulatedCampaign certificate(String id, UnaryOperator<Certificate> change) {
    return block(
        id, b -> With.component(b, "certificates", b.certificates().stream().map(change).toList()));
  }

  SimulatedCampaign certificate(String id, String component, Object value) {
    return certificate(id, c -> With.component(c, component, value));
  }

  /** A certificate whose value is wrong by a factor, its uncertainties with it. */
  SimulatedCampaign certifiedWrongly(String id, double factor) {
    return certificate(id, c -> With.component(c, "certified", factor * c.certified()));
  }

  /** Two blocks whose certificates were filed under each other's mark. */
  SimulatedCampaign swapped(String one, String other) {
    Certificate first = certificate(one);
    Certificate second = certificate(other);
    return certificate(one, c -> second).certificate(other, c -> first);
  }

  private Certificate certificate(String id) {
    return blocks.stream()
        .filter(b -> b.id().equals(id))
        .findFirst()
        .orElseThrow()
        .certificates()
        .get(0);
  }

  SimulatedCampaign reading(UnaryOperator<Reading> change) {
    return With.component(this, "readings", readings.stream().map(change).toList());
  }

  SimulatedCampaign reading(String component, Object value) {
    return reading(r -> With.component(r, component, value));
  }

  /** Without the readings of some blocks. */
  SimulatedCampaign without(String... ids) {
    List<String> gone = List.of(ids);
    return With.component(
        this, "readings", readings.stream().filter(r -> !gone.contains(r.block())).toList());
  }

  /** With some of its readings only. */
  SimulatedCampaign readings(Predicate<Reading> kept) {
    return With.component(this, "readings", readings.stream().filter(kept).toList());
  }

  /** A block whose readings scatter so many times as much about its mean. */
  SimulatedCampaign spread(String id, double factor) {
    double mean =
        readings.stream()
            .filter(r -> r.block().equals(id))
            .mapToDouble(Reading::displayed)
            .average()
            .orElseThrow();
    return reading(
        r ->
            r.block().equals(id)
                ? With.component(r, "displayed", mean + factor * (r.displayed() - mean))
                : r);
  }

  /** The same hardnesses under a response with another exponent. */
  SimulatedCampaign exponent(double exponent) {
    return reading(
        r ->
            With.component(r, "displayed", 1552 * Math.pow(r.displayed() / 1552, 2.05 / exponent)));
  }

  /** Certified values so far off a curve, up and down in turn, that no model qualifies. */
  static SimulatedCampaign unsettled() {
    return good()
        .certifiedWrongly("B2", 1.05)
        .certifiedWrongly("B3", 0.94)
        .certifiedWrongly("B4", 1.06)
        .certifiedWrongly("B6", 0.93)
        .certifiedWrongly("B7", 1.06);
  }

  /** The same blocks on a Rockwell scale, read by a rebound device. */
  static SimulatedCampaign rockwell() {
    HardnessScale hrc = HardnessScale.parse("HRC", "here");
    return good()
        .certificate("*", c -> hrc(c, hrc))
        .identified("scale", hrc)
        .identified("method", Method.REBOUND)
        .identified("responseKind", ResponseKind.REBOUND_RATIO)
        .policed("targetUncertainty", Optional.of(ErrorLimits.constant(false, 1.5)))
        .policed("permissibleError", Optional.of(ErrorLimits.constant(false, 1.5)))
        .policed("responseResolution", OptionalDouble.empty())
        .reading(r -> With.component(r, "displayed", 2000 - r.displayed()));
  }

  private static Certificate hrc(Certificate c, HardnessScale hrc) {
    double value = 20 + Math.round(10 * (c.certified() - 245) / 6.5) / 10.0;
    Certificate result = With.component(c, "certified", value);
    result = With.component(result, "scale", hrc);
    result = With.component(result, "expandedUncertainty", 0.8);
    result = With.component(result, "sharedUncertainty", some(0.25));
    return With.component(result, "nonUniformity", some(0.1));
  }

  SimulatedCampaign choosing(String model) {
    return With.component(
        this,
        "choice",
        Optional.of(new ModelChoice(new ModelId(model), "B. Reader", "as in the plan")));
  }

  SimulatedCampaign excluded(String file, int line, String reason) {
    List<Exclusion> all = new ArrayList<>(exclusions);
    all.add(new Exclusion(file, line, "B. Reader", reason, Instant.parse("2026-03-20T10:00:00Z")));
    return With.component(this, "exclusions", List.copyOf(all));
  }

  static OptionalDouble some(double value) {
    return OptionalDouble.of(value);
  }

  private static SimulatedCampaign simulate(long seed) {
    Random random = new Random(seed);
    List<ReferenceBlock> blocks = new ArrayList<>();
    List<Double> responses = new ArrayList<>();
    double machine = SHARED * random.nextGaussian();
    for (int i = 0; i < FIT.length + CHECK.length; i++) {
      boolean fit = i < FIT.length;
      double truth = fit ? FIT[i] : CHECK[i - FIT.length];
      String id = fit ? "B" + (i + 1) : "C" + (i - FIT.length + 1);
      double certified =
          Math.round(10 * truth * (1 + machine + OWN * random.nextGaussian())) / 10.0;
      blocks.add(block(id, fit ? BlockRole.FIT : BlockRole.CHECK, i, certified));
      double scattered = truth * (1 + BETWEEN * random.nextGaussian());
      responses.add(1552 * Math.pow(250 / scattered, 1 / 2.05));
    }
    blocks.add(
        With.component(block("S1", BlockRole.STANDARD, 20, 251), "material", Optional.of("steel")));
    responses.add(STEEL_RESPONSE);
    List<Reading> readings = new ArrayList<>();
    for (int run = 0; run < 4; run++) {
      readings.addAll(run(run, blocks, responses, random));
    }
    return new SimulatedCampaign(
        titanium(), policyOfTheLaboratory(), blocks, readings, List.of(), Optional.empty());
  }

  private static ReferenceBlock block(String id, BlockRole role, int i, double certified) {
    return new ReferenceBlock(
        id,
        Optional.of("titanium alpha-beta"),
        role,
        some(20),
        some(1.1),
        some(0.2),
        Optional.of("heat " + (char) ('P' + i % 3)),
        Optional.of(i % 2 == 0 ? "bar" : "plate"),
        some(114),
        some(1),
        some(0.34),
        List.of(
            new Certificate(
                HV10,
                certified,
                2 * Math.sqrt(SHARED * SHARED + OWN * OWN) * certified,
                2,
                some(0.002 * certified),
                Optional.of("Z-" + (101 + i)),
                Optional.of("Invented Bench Laboratory"),
                Optional.of(LocalDate.of(2025, 11, 3)),
                Optional.of(LocalDate.of(2028, 11, 3)),
                Optional.of("Bench 1"),
                some(SHARED * certified),
                OptionalInt.of(12))),
        Optional.empty());
  }

  private static List<Reading> run(
      int run, List<ReferenceBlock> blocks, List<Double> responses, Random random) {
    int steel = blocks.size() - 1;
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < steel; i++) {
      order.add(i);
    }
    Collections.shuffle(order, random);
    order.add(0, steel);
    order.add(steel);
    double effect = 1 + RUN * random.nextGaussian();
    LocalDateTime time = LocalDateTime.of(2026, 3, 2 + run, 9, 0);
    List<Reading> readings = new ArrayList<>();
    for (int k = 0; k < order.size(); k++) {
      int i = order.get(k);
      for (int j = 0; j < 3; j++) {
        double free = ZERO + Math.round(4 * (random.nextDouble() - 0.5));
        double response = responses.get(i) * effect * (1 + READING * random.nextGaussian());
        // On the standard block the last set lies in another row of places.
        boolean again = i == steel && k > 0;
        readings.add(
            new Reading(
                "run-" + (run + 1) + ".csv",
                readings.size() + 2,
                blocks.get(i).id(),
                Math.round(response + free - ZERO),
                Optional.of(time),
                Optional.of("R" + (run + 1)),
                Optional.of(run % 2 == 0 ? "Operator 1" : "Operator 2"),
                Optional.of("P-49"),
                some(23),
                some(free),
                some(2 + 3 * j),
                some(2 + 3 * run + (again ? 20 : 0)),
                Optional.empty(),
                Optional.empty()));
        time = time.plusMinutes(1);
      }
    }
    return readings;
  }

  private static CurveIdentity titanium() {
    return new CurveIdentity(
        "ti-49",
        Optional.empty(),
        "Titanium alpha-beta",
        Method.UCI,
        HV10,
        ResponseKind.FREQUENCY_SHIFT,
        some(49),
        Optional.of("Instrument 1"),
        Optional.of("P-49"),
        some(ZERO));
  }

  private static Policy policyOfTheLaboratory() {
    return new Policy(
        "Titanium, first issue",
        false,
        Optional.of(ErrorLimits.constant(true, 0.05)),
        Optional.of(ErrorLimits.constant(true, 0.05)),
        Optional.of(new DecisionRule(0, false)),
        TypeB.NONE,
        some(1),
        some(2),
        OptionalInt.of(365),
        OptionalInt.empty(),
        Map.of(),
        Optional.of("QP-7:2026, section 3"));
  }
}
