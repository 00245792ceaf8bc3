package fettle.acceptance;

import fettle.calibration.BlockResponse;
import fettle.quantity.HardnessScale;

/**
 * Hardnesses and differences written on one scale: with percent for Vickers and Brinell, in HR
 * units only for Rockwell, which is ordinal (VIM 1.26, from memory).
 */
record HardnessText(HardnessScale scale) {
  static HardnessText of(Evidence evidence) {
    return new HardnessText(evidence.analysis().campaign().dossier().identity().scale());
  }

  /** A hardness without the scale. */
  String number(double hardness) {
    return Figure.measured(hardness, scale.isOrdinal() ? 3 : 4);
  }

  /** A hardness with the scale. */
  String value(double hardness) {
    return number(hardness) + " " + scale;
  }

  /** A range of hardness with the scale. */
  String range(double low, double high) {
    return number(low) + " to " + value(high);
  }

  /** A signed difference, with its share of a hardness where that has a meaning. */
  String difference(double difference, double at) {
    String sign = difference < 0 ? "−" : "+";
    double size = Math.abs(difference);
    return sign + size(size) + (scale.isOrdinal() ? "" : " (" + sign + percent(size, at) + ")");
  }

  /** An unsigned size such as an uncertainty, with its share of a hardness likewise. */
  String size(double size, double at) {
    return size(size) + (scale.isOrdinal() ? "" : " (" + percent(size, at) + ")");
  }

  /** An unsigned size. */
  String size(double size) {
    return Figure.measured(size, 2) + " " + scale;
  }

  private static String percent(double size, double at) {
    return Figure.measured(100 * size / Math.abs(at), 2) + " %";
  }

  /** A block with its certified hardness. */
  String block(BlockResponse block) {
    return "Block "
        + block.block().id()
        + " (certified "
        + value(block.certificate().certified())
        + ")";
  }
}
