package fettle.report;

import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.calibration.Campaign;
import fettle.calibration.Dossier;
import fettle.curve.CurveIdentity;
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
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;

/**
 * Simulated campaigns of an invented laboratory. Vickers: h = a r⁻² with a chosen so that 200 HV10
 * gives 2500 Hz; Rockwell: a straight line. Four runs of three readings, two operators, one reading
 * excluded.
 */
final class SimulatedCampaign {
  private static final String FILE = "readings-2026.csv";
  private static final double SCALE_FACTOR = 200 * 2500.0 * 2500.0;

  private final int fitting;
  private final int checking;
  private final boolean rockwell;
  private final Policy policy;
  private final String hostile;
  private final Random random = new Random(20_260_301L);
  private final List<ReferenceBlock> blocks = new ArrayList<>();
  private final List<Reading> readings = new ArrayList<>();

  private SimulatedCampaign(
      int fitting, int checking, boolean rockwell, Policy policy, String hostile) {
    this.fitting = fitting;
    this.checking = checking;
    this.rockwell = rockwell;
    this.policy = policy;
    this.hostile = hostile;
  }

  static Campaign vickers(int fitting, int checking, Policy policy) {
    return new SimulatedCampaign(fitting, checking, false, policy, "").make();
  }

  static Campaign rockwell(int fitting, int checking, Policy policy) {
    return new SimulatedCampaign(fitting, checking, true, policy, "").make();
  }

  /** Every free text carries the given characters. */
  static Campaign withTexts(String hostile) {
    return new SimulatedCampaign(10, 3, false, vickersPolicy(), hostile).make();
  }

  static Policy vickersPolicy() {
    return policy(ErrorLimits.constant(true, 0.03), ErrorLimits.constant(true, 0.05), "");
  }

  static Policy rockwellPolicy() {
    return policy(ErrorLimits.constant(false, 1.2), ErrorLimits.constant(false, 2), "");
  }

  private static Policy policy(ErrorLimits target, ErrorLimits permissible, String hostile) {
    return new Policy(
        "House policy P-7 for portable hardness, simulated" + hostile,
        true,
        Optional.of(target),
        Optional.of(permissible),
        Optional.of(new DecisionRule(1, false)),
        new TypeB(
            OptionalDouble.empty(),
            OptionalDouble.of(0.002),
            OptionalDouble.of(0.003),
            OptionalDouble.empty()),
        OptionalDouble.of(1),
        OptionalDouble.of(2),
        OptionalInt.of(180),
        OptionalInt.empty(),
        Map.of(
            "between-block-scatter",
            new Limit(
                0.03,
                "example limit, no source" + hostile,
                "R. Example",
                LocalDate.of(2026, 1, 7))),
        Optional.of("targets set from the drawing tolerance, common practice" + hostile));
  }

  private Campaign make() {
    for (int i = 0; i < fitting; i++) {
      block("F" + (i + 1), i / (double) (fitting - 1), BlockRole.FIT);
    }
    for (int i = 0; i < checking; i++) {
      block("C" + (i + 1), (i + 0.55) / checking, BlockRole.CHECK);
    }
    Reading bad = readings.get(Math.min(40, readings.size() - 1));
    readings.set(readings.indexOf(bad), shifted(bad));
    Exclusion exclusion =
        new Exclusion(
            FILE,
            bad.line(),
            "A. Person" + hostile,
            "probe slipped off the block, seen while reading" + hostile,
            Instant.parse("2026-02-11T10:15:00Z"));
    return new Campaign(dossier(), blocks, readings, List.of(exclusion));
  }

  private Dossier dossier() {
    CurveIdentity identity =
        new CurveIdentity(
            (rockwell ? "tool-steel-hrc" : "stainless-uci98") + hostile,
            Optional.of("Invented laboratory, simulated readings" + hostile),
            (rockwell ? "Tool steel, tempered" : "Austenitic stainless steel, wrought") + hostile,
            rockwell ? Method.REBOUND : Method.UCI,
            scale(),
            rockwell ? ResponseKind.REBOUND_RATIO : ResponseKind.FREQUENCY_SHIFT,
            rockwell ? OptionalDouble.empty() : OptionalDouble.of(98),
            Optional.of("bench unit 2" + hostile),
            Optional.of("probe 14" + hostile),
            OptionalDouble.empty());
    Policy own =
        hostile.isEmpty()
            ? policy
            : policy(ErrorLimits.constant(true, 0.03), ErrorLimits.constant(true, 0.05), hostile);
    return new Dossier(identity, Map.of(), own);
  }

  private HardnessScale scale() {
    return HardnessScale.parse(rockwell ? "HRC" : "HV10", "test");
  }

  private void block(String id, double place, BlockRole role) {
    double hardness = rockwell ? 22 + 38 * place : 130 * Math.pow(2, place);
    double u = rockwell ? 0.25 : 0.006 * hardness;
    double certified = hardness + 0.5 * u * random.nextGaussian();
    double own = rockwell ? 0 : 0.005 * random.nextGaussian();
    blocks.add(
        new ReferenceBlock(
            id + hostile,
            Optional.of("stainless"),
            role,
            OptionalDouble.of(16),
            OptionalDouble.of(1.2),
            OptionalDouble.of(0.05),
            Optional.of("H" + (1 + blocks.size() % 3) + hostile),
            Optional.of("bar"),
            OptionalDouble.of(196),
            OptionalDouble.of(1.5),
            OptionalDouble.of(0.29),
            List.of(
                new Certificate(
                    scale(),
                    Math.round(10 * certified) / 10.0,
                    Math.round(200 * u) / 100.0,
                    2,
                    OptionalDouble.of(0.3 * u),
                    Optional.of("K-2026-" + (100 + blocks.size()) + hostile),
                    Optional.of("Invented hardness laboratory" + hostile),
                    Optional.of(LocalDate.of(2026, 1, 12)),
                    Optional.of(LocalDate.of(2029, 1, 11)),
                    Optional.of("bench machine M1" + hostile),
                    OptionalDouble.of(0.5 * u),
                    OptionalInt.of(10))),
            Optional.empty()));
    double response = rockwell ? 350 + 9 * hardness : Math.sqrt(SCALE_FACTOR / hardness);
    read(id + hostile, response * (1 + own));
  }

  private void read(String block, double response) {
    for (int run = 1; run <= 4; run++) {
      double runEffect = 0.001 * (run - 2.5);
      for (int k = 0; k < 3; k++) {
        double shown = response * (1 + runEffect + 0.004 * random.nextGaussian());
        readings.add(
            reading(
                readings.size() + 2,
                block,
                Math.round(shown),
                run,
                run % 2 == 1 ? "A. Person" : "B. Person"));
      }
    }
  }

  private Reading reading(int line, String block, double shown, int run, String operator) {
    return new Reading(
        FILE,
        line,
        block,
        shown,
        Optional.of(LocalDateTime.of(2026, 2, 9 + run, 9, 0).plusMinutes(line)),
        Optional.of("day " + run + hostile),
        Optional.of(operator + hostile),
        Optional.empty(),
        OptionalDouble.of(22.5),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private Reading shifted(Reading reading) {
    int run = Integer.parseInt(reading.run().orElseThrow().substring(4, 5));
    return reading(
        reading.line(),
        reading.block(),
        Math.round(1.12 * reading.displayed()),
        run,
        run % 2 == 1 ? "A. Person" : "B. Person");
  }
}
