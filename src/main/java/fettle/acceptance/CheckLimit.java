package fettle.acceptance;

import fettle.policy.Limit;
import fettle.policy.Policy;
import java.util.Objects;

/**
 * A limit of a check, as it stands where no policy says otherwise.
 *
 * @param id name under which a policy replaces it: the check's id, or that with a suffix where the
 *     check has several
 * @param standard the default
 * @param unit unit of the default and of a policy's value
 * @param meaning what it limits, in a few words
 */
public record CheckLimit(String id, double standard, Unit unit, String meaning) {
  /** Suffix of a limit beyond which a release stops, where one that needs a reason comes first. */
  public static final String STOP = "-stop";

  /** How a limit is written. */
  public enum Unit {
    /** A ratio, a factor, a count. */
    NUMBER("", 1),
    /** A fraction, written in percent. */
    FRACTION(" %", 100),
    /** Rockwell units. */
    HR(" HR", 1),
    /** Millimetres. */
    MILLIMETRE(" mm", 1),
    /** Kilograms. */
    KILOGRAM(" kg", 1),
    /** Micrometres. */
    MICROMETRE(" µm", 1),
    /** Hertz. */
    HERTZ(" Hz", 1),
    /** Degrees Celsius, or kelvins of a difference. */
    DEGREE(" °C", 1);

    private final String symbol;
    private final double factor;

    Unit(String symbol, double factor) {
      this.symbol = symbol;
      this.factor = factor;
    }

    String text(double value) {
      return Figure.of(factor * value, 3) + symbol;
    }
  }

  /** Checks that nothing is missing. */
  public CheckLimit {
    Objects.requireNonNull(id);
    Objects.requireNonNull(unit);
    Objects.requireNonNull(meaning);
  }

  /**
   * The default with its unit.
   *
   * @return for example {@code 3 %}
   */
  public String text() {
    return unit.text(standard);
  }

  /** The limit that a policy puts in its place, or itself. */
  LimitInForce under(Policy policy) {
    Limit limit = policy.limits().get(id);
    return limit == null
        ? new LimitInForce(standard, unit, "default")
        : new LimitInForce(limit.value(), unit, limit.citation());
  }
}
