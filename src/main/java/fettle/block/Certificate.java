package fettle.block;

import fettle.quantity.HardnessScale;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One certificate of a block: a certified hardness on one scale, with its uncertainty and origin.
 *
 * @param scale hardness scale of all values here
 * @param certified certified hardness, in the scale's unit
 * @param expandedUncertainty expanded uncertainty U of it, in the scale's unit, above 0
 * @param coverageFactor k of U, above 0
 * @param nonUniformity standard uncertainty of the difference between the certified mean and the
 *     mean over other places, in the scale's unit
 * @param number certificate number
 * @param certifiedBy laboratory that certified
 * @param certifiedOn date of certification
 * @param validUntil last day of validity
 * @param referenceMachine bench machine, the source shared with other blocks
 * @param sharedUncertainty part of the standard uncertainty common to all blocks of that machine,
 *     in the scale's unit
 * @param indentations number of certified indentations
 */
public record Certificate(
    HardnessScale scale,
    double certified,
    double expandedUncertainty,
    double coverageFactor,
    OptionalDouble nonUniformity,
    Optional<String> number,
    Optional<String> certifiedBy,
    Optional<LocalDate> certifiedOn,
    Optional<LocalDate> validUntil,
    Optional<String> referenceMachine,
    OptionalDouble sharedUncertainty,
    OptionalInt indentations) {

  /** Checks values. */
  public Certificate {
    Objects.requireNonNull(scale);
    if (!(certified > 0) || Double.isInfinite(certified)) {
      throw new IllegalArgumentException(
          "certified " + certified + ": finite and above 0 expected");
    }
    if (!(expandedUncertainty > 0) || Double.isInfinite(expandedUncertainty)) {
      throw new IllegalArgumentException(
          "expandedUncertainty " + expandedUncertainty + ": finite and above 0 expected");
    }
    if (!(coverageFactor > 0) || Double.isInfinite(coverageFactor)) {
      throw new IllegalArgumentException(
          "coverageFactor " + coverageFactor + ": finite and above 0 expected");
    }
  }

  /**
   * Standard uncertainty u = U / k of the certified hardness, shared part included.
   *
   * @return in the scale's unit
   */
  public double standardUncertainty() {
    return expandedUncertainty / coverageFactor;
  }

  /**
   * Whether the certificate stands on a day.
   *
   * @param day the day of use
   * @return false only when an end of validity is stated and lies before that day
   */
  public boolean validOn(LocalDate day) {
    return validUntil.map(end -> !day.isAfter(end)).orElse(true);
  }
}
