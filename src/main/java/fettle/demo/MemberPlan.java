package fettle.demo;

import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import java.time.LocalDate;
import java.util.List;

/**
 * One member of the invented alloy family on one scale: what the laboratory sets out to make.
 *
 * @param name name of the dossier
 * @param title its title
 * @param method measuring principle
 * @param scale hardness scale
 * @param material material, heat treatment included
 * @param mark first letters of its blocks' marks
 * @param elastic mean elastic constants of the member
 * @param contactFactor mean contact factor of the member
 * @param lowest lowest level of the fitting blocks
 * @param highest highest level of the fitting blocks
 * @param levels number of levels, in equal steps of ln H
 * @param doubled levels, counted from 0, of which there is a second block from another heat
 * @param firstDay day of the first run; the others follow daily
 * @param reverifiedOn day of the later reverification
 */
record MemberPlan(
    String name,
    String title,
    Method method,
    HardnessScale scale,
    String material,
    String mark,
    ElasticConstants elastic,
    double contactFactor,
    double lowest,
    double highest,
    int levels,
    List<Integer> doubled,
    LocalDate firstDay,
    LocalDate reverifiedOn) {

  private static final HardnessScale HV10 = HardnessScale.parse("HV10", "demo");
  private static final HardnessScale HBW = HardnessScale.parse("HBW 10/3000", "demo");
  private static final String FAMILY = "nickel-aluminium bronze, ";

  static final String AS_CAST = "nab-as-cast-hv10";
  static final String ANNEALED = "nab-annealed-hv10";
  static final String TEMPERED = "nab-quenched-tempered-hv10";
  static final String AS_CAST_HBW = "nab-as-cast-hbw";

  /**
   * The four members. As cast and annealed differ in modulus and in contact area so that their
   * curves nearly agree; quenched and tempered lies about one tenth higher at equal shift.
   */
  static List<MemberPlan> all() {
    return List.of(
        new MemberPlan(
            AS_CAST,
            "Invented and simulated: nickel-aluminium bronze as cast, HV10 by UCI with 98 N",
            Method.UCI,
            HV10,
            FAMILY + "as cast",
            "NC",
            new ElasticConstants(121.0, 0.33),
            1.00,
            140,
            250,
            8,
            List.of(2, 5),
            LocalDate.of(2026, 10, 5),
            LocalDate.of(2026, 11, 10)),
        new MemberPlan(
            ANNEALED,
            "Invented and simulated: nickel-aluminium bronze annealed, HV10 by UCI with 98 N",
            Method.UCI,
            HV10,
            FAMILY + "annealed",
            "NA",
            new ElasticConstants(122.5, 0.33),
            0.98,
            125,
            215,
            8,
            List.of(3),
            LocalDate.of(2026, 10, 12),
            LocalDate.of(2026, 11, 11)),
        new MemberPlan(
            TEMPERED,
            "Invented and simulated: nickel-aluminium bronze quenched and tempered, HV10 by UCI with 98 N",
            Method.UCI,
            HV10,
            FAMILY + "quenched and tempered",
            "NQ",
            new ElasticConstants(126.0, 0.33),
            1.03,
            180,
            320,
            8,
            List.of(2, 5),
            LocalDate.of(2026, 10, 19),
            LocalDate.of(2026, 11, 12)),
        new MemberPlan(
            AS_CAST_HBW,
            "Invented and simulated: nickel-aluminium bronze as cast, HBW 10/3000 by rebound",
            Method.REBOUND,
            HBW,
            FAMILY + "as cast",
            "NR",
            new ElasticConstants(121.0, 0.33),
            1.00,
            140,
            240,
            8,
            List.of(4),
            LocalDate.of(2026, 10, 26),
            LocalDate.of(2026, 11, 13)));
  }

  /** A level between the lowest (0) and the highest (1), in equal steps of ln H. */
  double level(double share) {
    return lowest * StrictMath.pow(highest / lowest, share);
  }

  /** The instrument's law. */
  ResponseLaw law() {
    return Instrument.of(method).law();
  }

  /** The bench machine that certified its blocks. */
  BenchMachine machine() {
    return method == Method.UCI ? BenchMachine.VICKERS : BenchMachine.BRINELL;
  }
}
