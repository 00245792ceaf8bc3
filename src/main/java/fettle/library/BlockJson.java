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
import java.util.OptionalDouble;

/** The JSON form of a reference block, format {@code fettle-block}. */
final class BlockJson {
  private BlockJson() {}

  static byte[] write(ReferenceBlock block) {
    ObjectNode node = FileFormat.BLOCK.begin();
    node.put("block", block.id());
    block.material().ifPresent(text -> node.put("material", text));
    node.put("role", block.defaultRole().id());
    put(node, "thicknessMm", block.thicknessMm());
    put(node, "massKg", block.massKg());
    put(node, "roughnessRaUm", block.roughnessRaUm());
    block.heat().ifPresent(text -> node.put("heat", text));
    block.productForm().ifPresent(text -> node.put("productForm", text));
    put(node, "elasticModulusGpa", block.elasticModulusGpa());
    put(node, "elasticModulusUncertaintyGpa", block.elasticModulusUncertaintyGpa());
    put(node, "poissonRatio", block.poissonRatio());
    ArrayNode certificates = node.putArray("certificates");
    block.certificates().forEach(certificate -> certificates.add(certificate(certificate)));
    block.withdrawn().ifPresent(reason -> node.put("withdrawn", reason));
    return Json.readable(node);
  }

  private static void put(ObjectNode node, String name, OptionalDouble value) {
    value.ifPresent(number -> node.set(name, Json.number(number)));
  }

  static ObjectNode certificate(Certificate certificate) {
    ObjectNode node = Json.object();
    node.put("scale", certificate.scale().symbol());
    node.set("certified", Json.number(certificate.certified()));
    node.set("expandedUncertainty", Json.number(certificate.expandedUncertainty()));
    node.set("coverageFactor", Json.number(certificate.coverageFactor()));
    put(node, "nonUniformity", certificate.nonUniformity());
    certificate.number().ifPresent(text -> node.put("number", text));
    certificate.certifiedBy().ifPresent(text -> node.put("certifiedBy", text));
    certificate.certifiedOn().ifPresent(day -> node.put("certifiedOn", day.toString()));
    certificate.validUntil().ifPresent(day -> node.put("validUntil", day.toString()));
    certificate.referenceMachine().ifPresent(text -> node.put("referenceMachine", text));
    put(node, "sharedUncertainty", certificate.sharedUncertainty());
    certificate.indentations().ifPresent(count -> node.put("indentations", count));
    return node;
  }

  static ReferenceBlock read(byte[] bytes, String file) {
    StrictObject object = FileFormat.BLOCK.read(bytes, file);
    List<Certificate> certificates = new ArrayList<>();
    for (StrictObject certificate : object.objects("certificates")) {
      certificates.add(certificate(certificate));
    }
    if (certificates.isEmpty()) {
      throw object.refusal("certificates", "There is no certificate.", "at least one");
    }
    ReferenceBlock block =
        new ReferenceBlock(
            object.text("block"),
            object.optionalText("material"),
            BlockRole.parse(object.text("role"), object.where("role")),
            object.optionalNumber("thicknessMm"),
            object.optionalNumber("massKg"),
            object.optionalNumber("roughnessRaUm"),
            object.optionalText("heat"),
            object.optionalText("productForm"),
            object.optionalNumber("elasticModulusGpa"),
            object.optionalNumber("elasticModulusUncertaintyGpa"),
            object.optionalNumber("poissonRatio"),
            certificates,
            object.optionalText("withdrawn"));
    object.nothingElse();
    return BlockRules.check(block, file);
  }

  private static Certificate certificate(StrictObject object) {
    Certificate certificate =
        new Certificate(
            HardnessScale.parse(object.text("scale"), object.where("scale")),
            object.positive("certified"),
            object.positive("expandedUncertainty"),
            object.positive("coverageFactor"),
            object.optionalNumber("nonUniformity"),
            object.optionalText("number"),
            object.optionalText("certifiedBy"),
            object.optionalDate("certifiedOn"),
            object.optionalDate("validUntil"),
            object.optionalText("referenceMachine"),
            object.optionalNumber("sharedUncertainty"),
            object.optionalInteger("indentations"));
    object.nothingElse();
    return certificate;
  }
}
