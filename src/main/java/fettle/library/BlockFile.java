package fettle.library;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.block.BlockRole;
import fettle.block.BlockRules;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.quantity.HardnessScale;
import java.util.ArrayList;
import java.util.List;

/** One reference block as JSON, format {@code fettle-block}, number 1. */
final class BlockFile {
  private static final String FORMAT = "fettle-block";
  private static final List<String> TOP =
      List.of(
          "format",
          "formatVersion",
          "block",
          "material",
          "role",
          "thicknessMm",
          "massKg",
          "roughnessRaUm",
          "heat",
          "productForm",
          "elasticModulusGpa",
          "elasticModulusUncertaintyGpa",
          "poissonRatio",
          "certificates",
          "withdrawn");
  private static final List<String> CERTIFICATE =
      List.of(
          "scale",
          "certified",
          "expandedUncertainty",
          "coverageFactor",
          "nonUniformity",
          "number",
          "certifiedBy",
          "certifiedOn",
          "validUntil",
          "referenceMachine",
          "sharedUncertainty",
          "indentations");

  private BlockFile() {}

  static byte[] bytes(ReferenceBlock block) {
    ObjectNode node = Json.object();
    node.put("format", FORMAT).put("formatVersion", 1).put("block", block.id());
    block.material().ifPresent(text -> node.put("material", text));
    node.put("role", block.defaultRole().id());
    block.thicknessMm().ifPresent(value -> node.put("thicknessMm", value));
    block.massKg().ifPresent(value -> node.put("massKg", value));
    block.roughnessRaUm().ifPresent(value -> node.put("roughnessRaUm", value));
    block.heat().ifPresent(text -> node.put("heat", text));
    block.productForm().ifPresent(text -> node.put("productForm", text));
    block.elasticModulusGpa().ifPresent(value -> node.put("elasticModulusGpa", value));
    block
        .elasticModulusUncertaintyGpa()
        .ifPresent(value -> node.put("elasticModulusUncertaintyGpa", value));
    block.poissonRatio().ifPresent(value -> node.put("poissonRatio", value));
    block.withdrawn().ifPresent(text -> node.put("withdrawn", text));
    ArrayNode certificates = node.putArray("certificates");
    block.certificates().forEach(one -> certificates.add(certificate(one)));
    return Json.canonical(node);
  }

  private static ObjectNode certificate(Certificate certificate) {
    ObjectNode node = Json.object();
    node.put("scale", certificate.scale().symbol());
    node.put("certified", certificate.certified());
    node.put("expandedUncertainty", certificate.expandedUncertainty());
    node.put("coverageFactor", certificate.coverageFactor());
    certificate.nonUniformity().ifPresent(value -> node.put("nonUniformity", value));
    certificate.number().ifPresent(text -> node.put("number", text));
    certificate.certifiedBy().ifPresent(text -> node.put("certifiedBy", text));
    certificate.certifiedOn().ifPresent(day -> node.put("certifiedOn", day.toString()));
    certificate.validUntil().ifPresent(day -> node.put("validUntil", day.toString()));
    certificate.referenceMachine().ifPresent(text -> node.put("referenceMachine", text));
    certificate.sharedUncertainty().ifPresent(value -> node.put("sharedUncertainty", value));
    certificate.indentations().ifPresent(value -> node.put("indentations", value));
    return node;
  }

  static ReferenceBlock read(byte[] bytes, String file) {
    Fields top = new Fields(Json.read(bytes, file), file);
    Json.requireFormat(top.object(), FORMAT, 1, file);
    top.allow(TOP);
    List<Certificate> certificates = new ArrayList<>();
    for (Fields fields : top.objects("certificates")) {
      certificates.add(certificate(fields));
    }
    if (certificates.isEmpty()) {
      throw top.refusal("certificates", "The block has no certificate.", "at least one");
    }
    ReferenceBlock block =
        new ReferenceBlock(
            BlockRules.id(top.text("block"), top.where("block")),
            top.optionalText("material"),
            BlockRole.parse(top.text("role"), top.where("role")),
            top.optionalNumber("thicknessMm"),
            top.optionalNumber("massKg"),
            top.optionalNumber("roughnessRaUm"),
            top.optionalText("heat"),
            top.optionalText("productForm"),
            top.optionalNumber("elasticModulusGpa"),
            top.optionalNumber("elasticModulusUncertaintyGpa"),
            top.optionalNumber("poissonRatio"),
            certificates,
            top.optionalText("withdrawn"));
    BlockRules.check(block, file);
    return block;
  }

  private static Certificate certificate(Fields fields) {
    fields.allow(CERTIFICATE);
    for (String name : List.of("certified", "expandedUncertainty", "coverageFactor")) {
      if (!(fields.number(name) > 0)) {
        throw fields.refusal(name, "The value is not above 0.", "a number above 0");
      }
    }
    return new Certificate(
        HardnessScale.parse(fields.text("scale"), fields.where("scale")),
        fields.number("certified"),
        fields.number("expandedUncertainty"),
        fields.number("coverageFactor"),
        fields.optionalNumber("nonUniformity"),
        fields.optionalText("number"),
        fields.optionalText("certifiedBy"),
        fields.optionalDate("certifiedOn"),
        fields.optionalDate("validUntil"),
        fields.optionalText("referenceMachine"),
        fields.optionalNumber("sharedUncertainty"),
        fields.optionalWhole("indentations"));
  }

  /** Whether a certificate is valid today is a check's question, not the file's. */
  static boolean sameFacts(ReferenceBlock a, ReferenceBlock b) {
    return a.material().equals(b.material())
        && a.defaultRole() == b.defaultRole()
        && a.thicknessMm().equals(b.thicknessMm())
        && a.massKg().equals(b.massKg())
        && a.roughnessRaUm().equals(b.roughnessRaUm())
        && a.heat().equals(b.heat())
        && a.productForm().equals(b.productForm())
        && a.elasticModulusGpa().equals(b.elasticModulusGpa())
        && a.elasticModulusUncertaintyGpa().equals(b.elasticModulusUncertaintyGpa())
        && a.poissonRatio().equals(b.poissonRatio());
  }
}
