package fettle.curve;

import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a curve is for.
 *
 * @param dossier name of the dossier it was made in
 * @param title free text
 * @param material material family
 * @param method measuring principle
 * @param scale hardness scale of the result
 * @param responseKind what the instrument returns
 * @param testForceNewtons test force of the probe in N
 * @param instrument instrument
 * @param probe probe or impact device
 * @param zeroFrequencyHz zero frequency of a UCI probe in Hz
 */
public record CurveIdentity(
    String dossier,
    Optional<String> title,
    String material,
    Method method,
    HardnessScale scale,
    ResponseKind responseKind,
    OptionalDouble testForceNewtons,
    Optional<String> instrument,
    Optional<String> probe,
    OptionalDouble zeroFrequencyHz) {}
