package fettle.demo;

import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Makes and certifies the blocks.
 *
 * <p>Between-block scatter at equal hardness comes from Young's modulus (0.5 %, which a UCI curve
 * turns into 0.9 % of the hardness) and from the contact factor; together about 1 % of the hardness
 * on either instrument. Certified values carry the machine's shared error, an individual one, and
 * are rounded to 0.1.
 */
final class BlockForge {
  private static final double MAKING_SD = 0.01;
  private static final double MODULUS_SD = 0.005;
  private static final double UCI_CONTACT_SD = 0.005;
  private static final double REBOUND_CONTACT_SD = 0.0095;
  private static final double STEEL_SD = 0.002;
  private static final double FIELD_SD = 0.003;
  private static final double NON_UNIFORMITY = 0.002;
  private static final double MODULUS_UNCERTAINTY_GPA = 0.6;
  private static final double BRONZE_G_PER_CM3 = 7.6;
  private static final double STEEL_G_PER_CM3 = 7.85;
  private static final double[] CHECK_SHARES = {0.14, 0.52, 0.86};

  private final long seed;
  private final PlantedFaults faults;

  BlockForge(long seed, PlantedFaults faults) {
    this.seed = seed;
    this.faults = faults;
  }

  /** What a block is to be, before chance. */
  private record Order(
      String id,
      BlockRole role,
      Method method,
      HardnessScale scale,
      String material,
      String heat,
      String form,
      double hardness,
      ElasticConstants elastic,
      double contactFactor,
      BenchMachine machine,
      LocalDate certifiedOn,
      int validYears) {
    boolean isSteel() {
      return role == BlockRole.STANDARD || role == BlockRole.DRIFT;
    }
  }

  /** The fitting and check blocks of a member, fitting blocks first. */
  List<SimulatedBlock> bronze(MemberPlan plan) {
    List<SimulatedBlock> blocks = new ArrayList<>();
    for (int level = 0; level < plan.levels(); level++) {
      double share = level / (plan.levels() - 1.0);
      // Neighbouring levels come from two heats, so that heat and level are not confounded.
      blocks.add(bronze(plan, blocks.size() + 1, BlockRole.FIT, level % 2 == 0 ? "A" : "B", share));
    }
    for (int level : plan.doubled()) {
      double share = level / (plan.levels() - 1.0);
      blocks.add(bronze(plan, blocks.size() + 1, BlockRole.FIT, level % 2 == 0 ? "B" : "A", share));
    }
    for (int i = 0; i < CHECK_SHARES.length; i++) {
      blocks.add(bronze(plan, 91 + i, BlockRole.CHECK, "C", CHECK_SHARES[i]));
    }
    return blocks;
  }

  private SimulatedBlock bronze(
      MemberPlan plan, int number, BlockRole role, String heat, double share) {
    return forge(
        new Order(
            String.format(Locale.ROOT, "%s-%02d", plan.mark(), number),
            role,
            plan.method(),
            plan.scale(),
            plan.material(),
            plan.mark() + "-heat-" + heat,
            "cast block",
            plan.level(share),
            plan.elastic(),
            plan.contactFactor(),
            plan.machine(),
            role == BlockRole.CHECK ? LocalDate.of(2026, 5, 5) : LocalDate.of(2026, 2, 3),
            2));
  }

  /** The steel blocks of a method: two standards, then the drift block. */
  List<SimulatedBlock> steel(Method method) {
    boolean uci = method == Method.UCI;
    return uci
        ? List.of(
            steel(method, "SU-01", BlockRole.STANDARD, "HV10", 380),
            steel(method, "SU-02", BlockRole.STANDARD, "HV10", 640),
            steel(method, "SU-03", BlockRole.DRIFT, "HV10", 500))
        : List.of(
            steel(method, "SR-01", BlockRole.STANDARD, "HBW 10/3000", 200),
            steel(method, "SR-02", BlockRole.STANDARD, "HBW 10/3000", 340),
            steel(method, "SR-03", BlockRole.DRIFT, "HBW 10/3000", 270));
  }

  private SimulatedBlock steel(
      Method method, String id, BlockRole role, String scale, double hardness) {
    return forge(
        new Order(
            id,
            role,
            method,
            HardnessScale.parse(scale, "demo"),
            "low-alloy steel",
            "S-heat-A",
            "forged block",
            hardness,
            ElasticConstants.STEEL,
            1,
            method == Method.UCI ? BenchMachine.VICKERS_STEEL : BenchMachine.BRINELL_STEEL,
            LocalDate.of(2025, 5, 12),
            3));
  }

  private SimulatedBlock forge(Order order) {
    NormalDraws draws = NormalDraws.of(seed, "block/" + order.id());
    boolean uci = order.method() == Method.UCI;
    double contactSd = uci ? UCI_CONTACT_SD : REBOUND_CONTACT_SD;
    double trueHardness = order.hardness() * (1 + draws.normal(MAKING_SD));
    ElasticConstants elastic =
        order.elastic().scaled(1 + draws.normal(order.isSteel() ? STEEL_SD : MODULUS_SD));
    double contact =
        order.contactFactor() * (1 + draws.normal(order.isSteel() ? STEEL_SD : contactSd));
    double certified =
        trueHardness
            * (1 + order.machine().error(seed) + draws.normal(BenchMachine.INDIVIDUAL))
            * faults.certifiedFactor(order.id());
    Face face = uci ? Face.SQUARE_60 : Face.DISC_120;
    HardnessField field = HardnessField.drawn(draws, FIELD_SD, face);
    double thickness = Rounding.to(0.01, (uci ? 40 : 60) + draws.uniform(-0.3, 0.3));
    ReferenceBlock block =
        new ReferenceBlock(
            order.id(),
            Optional.of(order.material()),
            order.role(),
            OptionalDouble.of(thickness),
            OptionalDouble.of(massKg(order, face, thickness)),
            OptionalDouble.of(Rounding.to(0.01, draws.uniform(0.08, 0.3))),
            Optional.of(order.heat()),
            Optional.of(order.form()),
            OptionalDouble.of(
                Rounding.to(0.1, elastic.modulusGpa() + draws.normal(MODULUS_UNCERTAINTY_GPA))),
            OptionalDouble.of(MODULUS_UNCERTAINTY_GPA),
            OptionalDouble.of(elastic.poissonRatio()),
            List.of(certificate(order, certified)),
            Optional.empty());
    return new SimulatedBlock(block, trueHardness, elastic, contact, face, field);
  }

  private static double massKg(Order order, Face face, double thicknessMm) {
    double density = order.isSteel() ? STEEL_G_PER_CM3 : BRONZE_G_PER_CM3;
    return Rounding.to(0.001, density * face.areaCm2() * thicknessMm / 10 / 1000);
  }

  private Certificate certificate(Order order, double certified) {
    LocalDate certifiedOn = faults.certifiedOn(order.id(), order.certifiedOn());
    int validYears = certifiedOn.equals(order.certifiedOn()) ? order.validYears() : 3;
    double relative = BenchMachine.standardUncertainty();
    return new Certificate(
        order.scale(),
        Rounding.to(0.1, certified),
        Rounding.to(0.01, 2 * relative * certified),
        2,
        OptionalDouble.of(Rounding.to(0.01, NON_UNIFORMITY * certified)),
        Optional.of("INVENTED-" + certifiedOn.getYear() + "-" + order.id()),
        Optional.of(order.machine().certifiedBy()),
        Optional.of(certifiedOn),
        Optional.of(certifiedOn.plusYears(validYears).minusDays(1)),
        Optional.of(order.machine().mark()),
        OptionalDouble.of(Rounding.to(0.01, BenchMachine.SHARED * certified)),
        OptionalInt.of(10));
  }
}
