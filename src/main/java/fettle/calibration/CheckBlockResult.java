package fettle.calibration;

import fettle.curve.Status;
import fettle.policy.Conformity;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the curve says of a block that was kept out of it.
 *
 * @param block the block with its readings
 * @param status whether its mean response is in range
 * @param hardness hardness from the curve
 * @param deviation hardness − certified, in the scale's unit
 * @param standardUncertainty of the deviation, the part shared by curve and block removed
 * @param expandedUncertainty half-width of its 95 % interval
 * @param en deviation over expandedUncertainty (ISO 13528)
 * @param permissibleError from the policy, in the scale's unit
 * @param conformity verdict by the policy's decision rule
 * @param conformityProbability probability that the true deviation is within the permissible error
 *     (JCGM 106:2012, clause 7)
 */
public record CheckBlockResult(
    BlockResponse block,
    Status status,
    double hardness,
    double deviation,
    double standardUncertainty,
    double expandedUncertainty,
    double en,
    OptionalDouble permissibleError,
    Optional<Conformity> conformity,
    OptionalDouble conformityProbability) {}
