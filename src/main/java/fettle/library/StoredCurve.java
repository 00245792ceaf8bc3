package fettle.library;

import fettle.curve.Curve;
import java.nio.file.Path;
import java.util.List;

/**
 * A curve file of the folder, its fingerprint verified.
 *
 * @param file where it stands
 * @param curve the curve
 * @param fingerprint SHA-256 of its content
 * @param program name and version of the program that wrote it
 * @param inputs fingerprints of what it rests on
 */
public record StoredCurve(
    Path file, Curve curve, String fingerprint, String program, List<InputFingerprint> inputs) {
  /** Copies. */
  public StoredCurve {
    inputs = List.copyOf(inputs);
  }
}
