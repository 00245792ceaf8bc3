package fettle.demo;

import fettle.block.BlockRole;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What a dossier of the demo laboratory is made from.
 *
 * @param name name of the dossier, also of its folder of readings
 * @param title free text
 * @param method measuring principle
 * @param scale hardness scale
 * @param material material of its fitting and check blocks
 * @param testForceNewtons test force of the probe in N, for UCI
 * @param zeroFrequencyHz zero frequency stored in the instrument in Hz, for UCI
 * @param probe probe or impact device
 * @param instrument the instrument in generic words
 * @param roles role of every block in it, fitting blocks first
 * @param readingFiles names of the files of its four runs, in order
 * @param reverificationFile name of the file of its later reverification
 */
public record DemoDossier(
    String name,
    String title,
    Method method,
    HardnessScale scale,
    String material,
    OptionalDouble testForceNewtons,
    OptionalDouble zeroFrequencyHz,
    String probe,
    String instrument,
    Map<String, BlockRole> roles,
    List<String> readingFiles,
    String reverificationFile) {

  /** Checks that nothing is missing and copies. */
  public DemoDossier {
    Objects.requireNonNull(name);
    Objects.requireNonNull(title);
    Objects.requireNonNull(method);
    Objects.requireNonNull(scale);
    Objects.requireNonNull(material);
    Objects.requireNonNull(testForceNewtons);
    Objects.requireNonNull(zeroFrequencyHz);
    Objects.requireNonNull(probe);
    Objects.requireNonNull(instrument);
    Objects.requireNonNull(reverificationFile);
    roles = Collections.unmodifiableMap(new LinkedHashMap<>(roles));
    readingFiles = List.copyOf(readingFiles);
  }
}
