package fettle.block;

import fettle.quantity.HardnessScale;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A physical reference block with all its certificates, oldest first.
 *
 * @param id permanent mark of the block, unique in the laboratory
 * @param material material family as the laboratory writes it
 * @param defaultRole role in a dossier that says nothing else
 * @param thicknessMm thickness in mm
 * @param massKg mass in kg
 * @param roughnessRaUm roughness Ra of the test face in µm
 * @param heat heat or lot
 * @param productForm product form
 * @param elasticModulusGpa Young's modulus in GPa
 * @param elasticModulusUncertaintyGpa standard uncertainty of it in GPa
 * @param poissonRatio Poisson ratio
 * @param certificates at least one; the last on a scale is the one in force
 * @param withdrawn reason, where the block was withdrawn from use
 */
public record ReferenceBlock(
    String id,
    Optional<String> material,
    BlockRole defaultRole,
    OptionalDouble thicknessMm,
    OptionalDouble massKg,
    OptionalDouble roughnessRaUm,
    Optional<String> heat,
    Optional<String> productForm,
    OptionalDouble elasticModulusGpa,
    OptionalDouble elasticModulusUncertaintyGpa,
    OptionalDouble poissonRatio,
    List<Certificate> certificates,
    Optional<String> withdrawn) {

  /** Checks and copies. */
  public ReferenceBlock {
    Objects.requireNonNull(id);
    Objects.requireNonNull(defaultRole);
    certificates = List.copyOf(certificates);
    if (certificates.isEmpty()) {
      throw new IllegalArgumentException("block " + id + ": at least one certificate expected");
    }
  }

  /**
   * The certificate in force for a scale.
   *
   * @param scale hardness scale
   * @return the newest on that scale
   */
  public Optional<Certificate> certificateFor(HardnessScale scale) {
    for (int i = certificates.size() - 1; i >= 0; i--) {
      if (certificates.get(i).scale().equals(scale)) {
        return Optional.of(certificates.get(i));
      }
    }
    return Optional.empty();
  }
}
