package fettle.demo;

import fettle.quantity.Method;
import java.util.OptionalDouble;

/**
 * The laboratory's two instruments with the sizes of their chance effects.
 *
 * <p>UCI effects are relative to the shift, rebound effects are in units of the response. Sizes are
 * common practice, no source.
 */
enum Instrument {
  /** Hand-held UCI probe with 98 N. */
  UCI(
      new ResponseLaw.Uci(new UciRod(65.6, 3, 2, 210, 7850), 98),
      "UCI-P1 (invented)",
      "hand-held UCI instrument (invented)",
      true,
      0.008,
      0.003,
      0.0035),
  /** Rebound device with an impact body of type D. */
  REBOUND(
      new ResponseLaw.Rebound(ReboundBody.TYPE_D),
      "RB-D1 (invented)",
      "hand-held rebound instrument, type D body (invented)",
      false,
      5.5,
      2.0,
      2.5);

  /** How far the zero was taken from the rod's frequency at 23 °C: a cooler day, 21.6 °C. */
  private static final double ZERO_OFFSET_HZ = 14;

  private static final double FREE_HZ_PER_KELVIN = -10;

  private final ResponseLaw law;
  private final String probe;
  private final String title;
  private final boolean relative;
  private final double readingSd;
  private final double operatorSd;
  private final double runSd;

  Instrument(
      ResponseLaw law,
      String probe,
      String title,
      boolean relative,
      double readingSd,
      double operatorSd,
      double runSd) {
    this.law = law;
    this.probe = probe;
    this.title = title;
    this.relative = relative;
    this.readingSd = readingSd;
    this.operatorSd = operatorSd;
    this.runSd = runSd;
  }

  static Instrument of(Method method) {
    return method == Method.UCI ? UCI : REBOUND;
  }

  ResponseLaw law() {
    return law;
  }

  String probe() {
    return probe;
  }

  String title() {
    return title;
  }

  double readingSd() {
    return readingSd;
  }

  double operatorSd() {
    return operatorSd;
  }

  double runSd() {
    return runSd;
  }

  /** A response moved by an effect of this instrument's kind. */
  double moved(double response, double effect) {
    return relative ? response * (1 + effect) : response + effect;
  }

  /** Test force in N, for UCI. */
  OptionalDouble testForceNewtons() {
    return law instanceof ResponseLaw.Uci uci
        ? OptionalDouble.of(uci.forceNewtons())
        : OptionalDouble.empty();
  }

  /** Free-rod frequency at a temperature in Hz, for UCI; −10 Hz/K about 23 °C. */
  OptionalDouble freeFrequencyHz(double temperatureC) {
    return law instanceof ResponseLaw.Uci uci
        ? OptionalDouble.of(uci.rod().freeFrequencyHz() + FREE_HZ_PER_KELVIN * (temperatureC - 23))
        : OptionalDouble.empty();
  }

  /** The zero stored in the instrument in Hz, for UCI. */
  OptionalDouble zeroFrequencyHz() {
    return law instanceof ResponseLaw.Uci uci
        ? OptionalDouble.of(Rounding.to(1, uci.rod().freeFrequencyHz() + ZERO_OFFSET_HZ))
        : OptionalDouble.empty();
  }

  /**
   * What the display shows, before rounding: the rod's frequency in contact less the stored zero.
   */
  double displayed(double response, double temperatureC) {
    OptionalDouble free = freeFrequencyHz(temperatureC);
    return free.isPresent()
        ? response + free.getAsDouble() - zeroFrequencyHz().getAsDouble()
        : response;
  }
}
