package fettle.statistics;

import java.util.function.IntToDoubleFunction;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * Average run lengths of control charts for independent normal values, in units of σ.
 *
 * <p>The chart's in-control interval is cut into states of one width, the chart becomes a Markov
 * chain, and the run lengths solve (I − R) L = 1 (Brook and Evans). Two widths are extrapolated to
 * zero (the error goes with the square of the width). Relative error below 5e-4, for usual charts
 * below 1e-4.
 *
 * <p>Cost: two linear systems of at most 241 unknowns.
 *
 * @see "D. Brook, D. A. Evans, An approach to the probability distribution of cusum run length,
 *     Biometrika 59 (1972) 539"
 */
public final class AverageRunLength {
  private static final int COARSE = 60;
  private static final int FINE = 120;

  private AverageRunLength() {}

  /**
   * Shewhart chart of single values or means with symmetric limits.
   *
   * @param width L: limits at ± L σ, above zero
   * @param shift of the mean in σ
   * @return expected number of values until one lies outside
   */
  public static double shewhart(double width, double shift) {
    Arguments.positive("width", width);
    Arguments.finite("shift", shift);
    return 1 / (Quantiles.normalTail(width - shift) + Quantiles.normalTail(width + shift));
  }

  /**
   * EWMA chart with constant limits, started at the target.
   *
   * @param lambda weight of the newest value, above 0, at most 1
   * @param width L: limits at ± L σ √(λ/(2 − λ)), above zero
   * @param shift of the mean in σ
   * @return expected number of values until the average lies outside
   */
  public static double ewma(double lambda, double width, double shift) {
    EwmaChart.checkLambda(lambda);
    Arguments.positive("width", width);
    Arguments.finite("shift", shift);
    double limit = width * Math.sqrt(lambda / (2 - lambda));
    return extrapolated(half -> ewma(lambda, limit, shift, half), half -> limit / (half + 0.5));
  }

  private static double ewma(double lambda, double limit, double shift, int half) {
    int states = 2 * half + 1;
    double width = 2 * limit / states;
    DMatrixRMaj system = new DMatrixRMaj(states, states);
    for (int i = 0; i < states; i++) {
      double kept = (1 - lambda) * (i - half) * width;
      double above = Quantiles.normalTail((-limit - kept) / lambda - shift);
      for (int j = 0; j < states; j++) {
        double next = Quantiles.normalTail((-limit + (j + 1) * width - kept) / lambda - shift);
        system.set(i, j, (i == j ? 1 : 0) - (above - next));
        above = next;
      }
    }
    return runLengths(system).get(half, 0);
  }

  /**
   * One side of a cusum, started at 0.
   *
   * @param allowance k in σ, not negative
   * @param decision h in σ, above zero
   * @param shift of the mean in σ, towards the side
   * @return expected number of values until the sum lies above h
   */
  public static double cusumOneSided(double allowance, double decision, double shift) {
    Arguments.notNegative("allowance", allowance);
    Arguments.positive("decision", decision);
    Arguments.finite("shift", shift);
    double drift = allowance - shift;
    return extrapolated(
        states -> cusum(drift, decision, states), states -> decision / (states - 0.5));
  }

  /** States 0, w, 2w … with state 0 for the sum held at zero; w = h/(states − ½). */
  private static double cusum(double drift, double decision, int states) {
    double width = decision / (states - 0.5);
    DMatrixRMaj system = new DMatrixRMaj(states, states);
    for (int i = 0; i < states; i++) {
      double above = 1;
      for (int j = 0; j < states; j++) {
        double next = Quantiles.normalTail((j - i + 0.5) * width + drift);
        system.set(i, j, (i == j ? 1 : 0) - (above - next));
        above = next;
      }
    }
    return runLengths(system).get(0, 0);
  }

  /**
   * Both sides of a cusum together, each started at 0.
   *
   * @param allowance k in σ, not negative
   * @param decision h in σ, above zero
   * @param shift of the mean in σ
   * @return expected number of values until either sum lies above h
   * @see "K. W. Kemp, The average run length of the cumulative sum chart when a V-mask is used, J.
   *     R. Stat. Soc. B 23 (1961) 149 (1/L = 1/L₊ + 1/L₋)"
   */
  public static double cusum(double allowance, double decision, double shift) {
    return 1
        / (1 / cusumOneSided(allowance, decision, shift)
            + 1 / cusumOneSided(allowance, decision, -shift));
  }

  private static DMatrixRMaj runLengths(DMatrixRMaj system) {
    DMatrixRMaj ones = new DMatrixRMaj(system.numRows, 1);
    CommonOps_DDRM.fill(ones, 1);
    DMatrixRMaj lengths = new DMatrixRMaj(system.numRows, 1);
    if (!CommonOps_DDRM.solve(system, ones, lengths)) {
      throw new ArithmeticException("the run length is too long to be computed");
    }
    return lengths;
  }

  private static double extrapolated(IntToDoubleFunction length, IntToDoubleFunction width) {
    double ratio = width.applyAsDouble(COARSE) / width.applyAsDouble(FINE);
    double weight = ratio * ratio;
    return (weight * length.applyAsDouble(FINE) - length.applyAsDouble(COARSE)) / (weight - 1);
  }
}
