package fettle.library;

import fettle.block.BlockRole;
import fettle.block.BlockRules;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.refusal.InputRefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A kept block and what is newly stated about it: facts may be added but never contradicted, and
 * certificates are added and never changed.
 */
final class BlockMerge {
  private final ReferenceBlock kept;
  private final ReferenceBlock stated;

  BlockMerge(ReferenceBlock kept, ReferenceBlock stated) {
    this.kept = kept;
    this.stated = stated;
  }

  ReferenceBlock merged() {
    if (kept.withdrawn().isPresent()) {
      throw new InputRefusedException(
          "Block " + kept.id() + " was withdrawn: " + kept.withdrawn().get(),
          "block " + kept.id(),
          "a block in use",
          "give a block that comes back into use another mark");
    }
    ReferenceBlock merged =
        new ReferenceBlock(
            kept.id(),
            text("material", kept.material(), stated.material()),
            role(),
            number("thickness_mm", kept.thicknessMm(), stated.thicknessMm()),
            number("mass_kg", kept.massKg(), stated.massKg()),
            number("roughness_ra_um", kept.roughnessRaUm(), stated.roughnessRaUm()),
            text("heat", kept.heat(), stated.heat()),
            text("product_form", kept.productForm(), stated.productForm()),
            number("elastic_modulus_gpa", kept.elasticModulusGpa(), stated.elasticModulusGpa()),
            number(
                "u_elastic_modulus_gpa",
                kept.elasticModulusUncertaintyGpa(),
                stated.elasticModulusUncertaintyGpa()),
            number("poisson_ratio", kept.poissonRatio(), stated.poissonRatio()),
            certificates(),
            Optional.empty());
    return BlockRules.check(merged, "block " + kept.id());
  }

  private Optional<String> text(String fact, Optional<String> before, Optional<String> now) {
    if (before.isPresent() && now.isPresent() && !before.equals(now)) {
      throw contradiction(fact, before.get(), now.get());
    }
    return before.or(() -> now);
  }

  private OptionalDouble number(String fact, OptionalDouble before, OptionalDouble now) {
    if (before.isPresent() && now.isPresent() && before.getAsDouble() != now.getAsDouble()) {
      throw contradiction(fact, shown(before.getAsDouble()), shown(now.getAsDouble()));
    }
    return before.isPresent() ? before : now;
  }

  private static String shown(double value) {
    return Json.number(value).asText();
  }

  /** Role fit is also what a block has that says nothing, so it contradicts nothing. */
  private BlockRole role() {
    if (stated.defaultRole() != BlockRole.FIT && stated.defaultRole() != kept.defaultRole()) {
      throw contradiction("role", kept.defaultRole().id(), stated.defaultRole().id());
    }
    return kept.defaultRole();
  }

  private InputRefusedException contradiction(String fact, String before, String now) {
    return new InputRefusedException(
        "Block "
            + kept.id()
            + " has "
            + fact
            + " "
            + now
            + " here, but "
            + before
            + " in the laboratory.",
        "block " + kept.id(),
        "the same " + fact + " as before, or none",
        fact.equals("role")
            ? "leave the role out, and set it in the dossier where it differs"
            : "correct it, or give the second block its own mark");
  }

  private List<Certificate> certificates() {
    List<Certificate> all = new ArrayList<>(kept.certificates());
    for (Certificate certificate : stated.certificates()) {
      if (!all.contains(certificate)) {
        all.forEach(before -> requireOrder(before, certificate));
        all.add(certificate);
      }
    }
    all.sort(Comparator.comparing(c -> c.certifiedOn().orElse(LocalDate.MIN)));
    return all;
  }

  /** Of two certificates on one scale it must be plain which one is in force. */
  private void requireOrder(Certificate before, Certificate certificate) {
    if (!before.scale().equals(certificate.scale())) {
      return;
    }
    if (before.number().equals(certificate.number())) {
      throw new InputRefusedException(
          "Block "
              + kept.id()
              + " has another certificate on "
              + certificate.scale()
              + " with "
              + certificate.number().map(number -> "number " + number).orElse("no number")
              + " already, of other contents.",
          "block " + kept.id(),
          "the certificate as it was entered, or one with another number",
          "correct it; a certificate that was issued anew has a number of its own");
    }
    if (before.certifiedOn().isEmpty()
        || certificate.certifiedOn().isEmpty()
        || before.certifiedOn().equals(certificate.certifiedOn())) {
      throw new InputRefusedException(
          "Block "
              + kept.id()
              + " has a certificate on "
              + certificate.scale()
              + " already, and the dates do not tell which one is newer.",
          "block " + kept.id(),
          "certified_on in both, with different days",
          "state the date of certification");
    }
  }

  /** The same block with other certificates. */
  static ReferenceBlock withCertificates(ReferenceBlock block, List<Certificate> certificates) {
    return with(block, certificates, block.withdrawn());
  }

  /** The same block, withdrawn. */
  static ReferenceBlock withdrawn(ReferenceBlock block, String reason) {
    return with(block, block.certificates(), Optional.of(reason));
  }

  private static ReferenceBlock with(
      ReferenceBlock block, List<Certificate> certificates, Optional<String> withdrawn) {
    return new ReferenceBlock(
        block.id(),
        block.material(),
        block.defaultRole(),
        block.thicknessMm(),
        block.massKg(),
        block.roughnessRaUm(),
        block.heat(),
        block.productForm(),
        block.elasticModulusGpa(),
        block.elasticModulusUncertaintyGpa(),
        block.poissonRatio(),
        certificates,
        withdrawn);
  }
}
