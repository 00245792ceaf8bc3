package fettle.policy;

import java.util.OptionalDouble;

/**
 * Type B components of the response, as relative standard uncertainties (fractions of the
 * response).
 *
 * @param run one run's common effect, for campaigns with fewer than four runs
 * @param operator one operator's common effect
 * @param drift the probe's drift since its last check
 * @param temperature temperature between campaign and use
 */
public record TypeB(
    OptionalDouble run, OptionalDouble operator, OptionalDouble drift, OptionalDouble temperature) {
  /** No statement on any of them. */
  public static final TypeB NONE =
      new TypeB(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());
}
