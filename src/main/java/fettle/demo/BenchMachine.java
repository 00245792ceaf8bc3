package fettle.demo;

/**
 * A bench hardness machine of the invented certifying laboratory.
 *
 * <p>Its error is one draw for all blocks it certified; a certificate adds an individual one. The
 * certificate states both spreads, not the errors.
 *
 * @param mark the machine's mark, as on certificates
 * @param certifiedBy the laboratory it stands in
 */
record BenchMachine(String mark, String certifiedBy) {
  /** Relative standard uncertainty common to all blocks of a machine. */
  static final double SHARED = 0.008;

  /** Relative standard uncertainty of one certificate alone. */
  static final double INDIVIDUAL = 0.006;

  private static final String LABORATORY = "Invented Bench Calibration Laboratory";

  static final BenchMachine VICKERS = new BenchMachine("HV-A (invented)", LABORATORY);
  static final BenchMachine BRINELL = new BenchMachine("HB-A (invented)", LABORATORY);
  static final BenchMachine VICKERS_STEEL =
      new BenchMachine("HV-S (invented)", "Invented Steel Block Works");
  static final BenchMachine BRINELL_STEEL =
      new BenchMachine("HB-S (invented)", "Invented Steel Block Works");

  /** The machine's relative error under a seed. */
  double error(long seed) {
    return NormalDraws.of(seed, "machine/" + mark).normal(SHARED);
  }

  /** Relative standard uncertainty of a certified value. */
  static double standardUncertainty() {
    return StrictMath.sqrt(SHARED * SHARED + INDIVIDUAL * INDIVIDUAL);
  }
}
