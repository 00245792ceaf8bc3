package fettle.selfcheck;

import java.util.List;

/**
 * One published case.
 *
 * @param id short name
 * @param title what it is
 * @param source where it is printed
 * @param values its values, in the order of the source
 */
public record CheckedCase(String id, String title, String source, List<CheckedValue> values) {
  /** Copies. */
  public CheckedCase {
    values = List.copyOf(values);
  }

  /**
   * Whether every value is met.
   *
   * @return true if so
   */
  public boolean passed() {
    return values.stream().allMatch(CheckedValue::passed);
  }
}
