package fettle.policy;

import java.util.List;

/**
 * A limit on an error or an uncertainty that depends on the hardness: relative for Vickers and
 * Brinell, in HR units for Rockwell.
 *
 * @param steps ordered by {@code upTo}; the last also holds above its {@code upTo}
 */
public record ErrorLimits(List<Step> steps) {
  /**
   * One stretch of hardness.
   *
   * @param upTo highest hardness of the stretch; infinite for the last
   * @param relative whether the value is a fraction of the hardness
   * @param value fraction, or scale units
   */
  public record Step(double upTo, boolean relative, double value) {}

  /** Checks order. */
  public ErrorLimits {
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("steps: at least one expected");
    }
    for (int i = 1; i < steps.size(); i++) {
      if (!(steps.get(i).upTo() > steps.get(i - 1).upTo())) {
        throw new IllegalArgumentException("steps: upTo must rise");
      }
    }
  }

  /**
   * One limit for all hardnesses.
   *
   * @param relative whether it is a fraction of the hardness
   * @param value fraction, or scale units
   * @return the limits
   */
  public static ErrorLimits constant(boolean relative, double value) {
    return new ErrorLimits(List.of(new Step(Double.POSITIVE_INFINITY, relative, value)));
  }

  /**
   * The limit at a hardness.
   *
   * @param hardness in the scale's unit
   * @return in the scale's unit
   */
  public double at(double hardness) {
    for (Step step : steps) {
      if (hardness <= step.upTo()) {
        return valueOf(step, hardness);
      }
    }
    return valueOf(steps.get(steps.size() - 1), hardness);
  }

  private static double valueOf(Step step, double hardness) {
    return step.relative() ? step.value() * Math.abs(hardness) : step.value();
  }
}
