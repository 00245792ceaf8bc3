package fettle.demo;

import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.reading.Reading;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.StringJoiner;

/** Blocks and readings in their plain CSV forms; decimal point, comma, line feed, UTF-8. */
final class IncomingCsv {
  private static final String BLOCKS_HEADER =
      "block,scale,certified,expanded_uncertainty,coverage_factor,non_uniformity,certificate,"
          + "certified_by,certified_on,valid_until,reference_machine,u_shared,material,role,"
          + "thickness_mm,mass_kg,roughness_ra_um,heat,product_form,elastic_modulus_gpa,"
          + "u_elastic_modulus_gpa,poisson_ratio,indentations";
  private static final String READINGS_HEADER =
      "block,response,taken_at,run,operator,probe,temperature_c,free_frequency_hz,x_mm,y_mm,"
          + "direction,note";

  private IncomingCsv() {}

  static String blocks(List<ReferenceBlock> blocks) {
    StringBuilder text = new StringBuilder(BLOCKS_HEADER).append('\n');
    for (ReferenceBlock block : blocks) {
      for (Certificate certificate : block.certificates()) {
        text.append(row(block, certificate)).append('\n');
      }
    }
    return text.toString();
  }

  private static String row(ReferenceBlock block, Certificate certificate) {
    return new StringJoiner(",")
        .add(cell(block.id()))
        .add(cell(certificate.scale().symbol()))
        .add(number(certificate.certified(), 1))
        .add(number(certificate.expandedUncertainty(), 2))
        .add(number(certificate.coverageFactor(), 0))
        .add(number(certificate.nonUniformity(), 2))
        .add(cell(certificate.number()))
        .add(cell(certificate.certifiedBy()))
        .add(cell(certificate.certifiedOn()))
        .add(cell(certificate.validUntil()))
        .add(cell(certificate.referenceMachine()))
        .add(number(certificate.sharedUncertainty(), 2))
        .add(cell(block.material()))
        .add(block.defaultRole().id())
        .add(number(block.thicknessMm(), 2))
        .add(number(block.massKg(), 3))
        .add(number(block.roughnessRaUm(), 2))
        .add(cell(block.heat()))
        .add(cell(block.productForm()))
        .add(number(block.elasticModulusGpa(), 1))
        .add(number(block.elasticModulusUncertaintyGpa(), 1))
        .add(number(block.poissonRatio(), 2))
        .add(
            certificate.indentations().isPresent()
                ? Integer.toString(certificate.indentations().getAsInt())
                : "")
        .toString();
  }

  static String readings(List<Reading> readings) {
    StringBuilder text = new StringBuilder(READINGS_HEADER).append('\n');
    for (Reading reading : readings) {
      text.append(
              new StringJoiner(",")
                  .add(cell(reading.block()))
                  .add(number(reading.displayed(), 0))
                  .add(cell(reading.takenAt()))
                  .add(cell(reading.run()))
                  .add(cell(reading.operator()))
                  .add(cell(reading.probe()))
                  .add(number(reading.temperatureC(), 1))
                  .add(number(reading.freeFrequencyHz(), 0))
                  .add(number(reading.xMm(), 1))
                  .add(number(reading.yMm(), 1))
                  .add(cell(reading.direction()))
                  .add(cell(reading.note())))
          .append('\n');
    }
    return text.toString();
  }

  private static String cell(Optional<?> value) {
    return value.map(some -> cell(some.toString())).orElse("");
  }

  private static String cell(String text) {
    return text.contains(",") || text.contains("\"")
        ? '"' + text.replace("\"", "\"\"") + '"'
        : text;
  }

  private static String number(OptionalDouble value, int digits) {
    return value.isPresent() ? number(value.getAsDouble(), digits) : "";
  }

  /** With a fixed number of decimals, trailing zeros included, as an instrument shows it. */
  private static String number(double value, int digits) {
    return new BigDecimal(value).setScale(digits, RoundingMode.HALF_EVEN).toPlainString();
  }
}
