package fettle.table;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * A number of a table, kept as written, exactly, and as the nearest double.
 *
 * <p>A fit that works with more digits than a double has starts from {@link #exact}.
 *
 * @param written the number as it stands in the cell, blanks around it removed
 * @param value the nearest double, finite
 * @param exact the number itself
 */
public record DecimalText(String written, double value, BigDecimal exact) {
  /** Checks the value. */
  public DecimalText {
    Objects.requireNonNull(written);
    Objects.requireNonNull(exact);
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("value " + value + ": finite expected");
    }
  }
}
