package fettle.library;

import fettle.calibration.ModelChoice;
import fettle.curve.Curve;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A curve file of the folder, its fingerprint verified.
 *
 * @param file where it stands
 * @param curve the curve
 * @param fingerprint SHA-256 of its content in canonical form
 * @param program name and version of the program that wrote it
 * @param choice the person's choice of model, empty where the recommendation was followed
 * @param inputs what it rests on
 */
public record StoredCurve(
    Path file,
    Curve curve,
    String fingerprint,
    String program,
    Optional<ModelChoice> choice,
    List<InputFingerprint> inputs) {
  /** Copies. */
  public StoredCurve {
    inputs = List.copyOf(inputs);
  }
}
