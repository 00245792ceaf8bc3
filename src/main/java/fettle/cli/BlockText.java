package fettle.cli;

import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.quantity.UncertaintyRounding;
import java.io.IOException;
import java.io.PrintStream;
import java.time.LocalDate;

/** Blocks as JSON and as text. */
final class BlockText {
  private BlockText() {}

  static void json(JsonOut json, ReferenceBlock block) throws IOException {
    json.put("block", block.id())
        .put("material", block.material())
        .put("role", block.defaultRole().id())
        .put("heat", block.heat())
        .put("productForm", block.productForm())
        .put("thicknessMm", block.thicknessMm())
        .put("massKg", block.massKg())
        .put("roughnessRaUm", block.roughnessRaUm())
        .put("elasticModulusGpa", block.elasticModulusGpa())
        .put("withdrawn", block.withdrawn())
        .putArray(
            "certificates",
            list -> {
              for (Certificate certificate : block.certificates()) {
                list.addObject(one -> certificate(one, certificate));
              }
            });
  }

  private static void certificate(JsonOut json, Certificate certificate) throws IOException {
    json.put("scale", certificate.scale().symbol())
        .put("certified", certificate.certified())
        .put("expandedUncertainty", certificate.expandedUncertainty())
        .put("coverageFactor", certificate.coverageFactor())
        .put("nonUniformity", certificate.nonUniformity())
        .put("certificate", certificate.number())
        .put("certifiedBy", certificate.certifiedBy())
        .put("certifiedOn", certificate.certifiedOn().map(LocalDate::toString))
        .put("validUntil", certificate.validUntil().map(LocalDate::toString))
        .put("referenceMachine", certificate.referenceMachine())
        .put("sharedUncertainty", certificate.sharedUncertainty());
  }

  /** One line for each certificate in force. */
  static void line(PrintStream out, ReferenceBlock block) {
    for (Certificate certificate : block.certificates()) {
      UncertaintyRounding rounded =
          UncertaintyRounding.of(certificate.certified(), certificate.expandedUncertainty());
      out.println(
          "  "
              + pad(block.id(), 14)
              + pad(block.defaultRole().id(), 9)
              + pad(
                  "("
                      + rounded.valueText()
                      + " ± "
                      + rounded.uncertaintyText()
                      + ") "
                      + certificate.scale(),
                  28)
              + pad(certificate.validUntil().map(day -> "valid until " + day).orElse(""), 26)
              + block.withdrawn().map(reason -> "withdrawn: " + reason).orElse(""));
    }
  }

  static void details(PrintStream out, ReferenceBlock block) {
    out.println("Block " + block.id());
    block.withdrawn().ifPresent(reason -> out.println("  withdrawn    " + reason));
    block.material().ifPresent(text -> out.println("  material     " + text));
    out.println("  role         " + block.defaultRole().id() + " unless a dossier says otherwise");
    block.heat().ifPresent(text -> out.println("  heat         " + text));
    block.productForm().ifPresent(text -> out.println("  product form " + text));
    block.thicknessMm().ifPresent(value -> out.println("  thickness    " + value + " mm"));
    block.massKg().ifPresent(value -> out.println("  mass         " + value + " kg"));
    block.roughnessRaUm().ifPresent(value -> out.println("  Ra           " + value + " µm"));
    block.elasticModulusGpa().ifPresent(value -> out.println("  E            " + value + " GPa"));
    for (Certificate certificate : block.certificates()) {
      UncertaintyRounding rounded =
          UncertaintyRounding.of(certificate.certified(), certificate.expandedUncertainty());
      out.println(
          "  certificate  "
              + certificate.number().orElse("(no number)")
              + ": ("
              + rounded.valueText()
              + " ± "
              + rounded.uncertaintyText()
              + ") "
              + certificate.scale()
              + ", k = "
              + certificate.coverageFactor()
              + certificate.validUntil().map(day -> ", valid until " + day).orElse("")
              + certificate.referenceMachine().map(name -> ", machine " + name).orElse(""));
    }
  }

  private static String pad(String text, int width) {
    return text + " ".repeat(Math.max(1, width - text.length()));
  }
}
