package fettle.block;

import fettle.refusal.InputRefusedException;
import fettle.table.Cell;
import java.math.BigDecimal;

/**
 * A measured property of a block and the range outside which its number or unit is surely wrong.
 * The ranges are deliberately wide (common practice, no source): whether a block suits its use is
 * for the checks to say.
 */
enum PhysicalQuantity {
  THICKNESS("thickness_mm", 0.01, 10_000, "mm"),
  MASS("mass_kg", 0.0001, 10_000, "kg"),
  ROUGHNESS("roughness_ra_um", 0, 1_000, "µm"),
  MODULUS("elastic_modulus_gpa", 1, 1_000, "GPa"),
  MODULUS_UNCERTAINTY("u_elastic_modulus_gpa", 0, 1_000, "GPa"),
  POISSON_RATIO("poisson_ratio", 0, 0.5, "");

  private final String column;
  private final double low;
  private final double high;
  private final String unit;

  PhysicalQuantity(String column, double low, double high, String unit) {
    this.column = column;
    this.low = low;
    this.high = high;
    this.unit = unit;
  }

  String column() {
    return column;
  }

  double read(Cell cell) {
    return cell.between(low, high, unit);
  }

  void check(double value, String where) {
    if (!(value >= low && value <= high)) {
      throw new InputRefusedException(
          column + " " + value + " is out of range.",
          where,
          "a number from " + plain(low) + " to " + plain(high) + (unit.isEmpty() ? "" : " " + unit),
          "check the number and its unit");
    }
  }

  static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
