package fettle.quantity;

import fettle.refusal.InputRefusedException;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A hardness scale as it is written after a value: {@code HV10}, {@code HBW 10/3000}, {@code HRC}.
 *
 * <p>Vickers and Brinell hardness are ratios of force to area, so relative uncertainties make
 * sense. Rockwell scales are ordinal (VIM entry 1.26 gives Rockwell C as its example): their
 * uncertainties stay in HR units, never in percent, and no logarithm is taken of them.
 *
 * @param family the method behind the scale
 * @param symbol the normalised symbol
 */
public record HardnessScale(Family family, String symbol) {
  /** The bench method behind a scale. */
  public enum Family {
    /** ISO 6507. */
    VICKERS,
    /** ISO 6506. */
    BRINELL,
    /** ISO 6508. */
    ROCKWELL
  }

  private static final double STANDARD_GRAVITY = 9.80665;
  private static final Pattern VICKERS = Pattern.compile("HV\\s*(\\d{1,3}(?:\\.\\d{1,3})?)");
  private static final Pattern BRINELL =
      Pattern.compile("HBW\\s*(\\d{1,2}(?:\\.\\d)?)\\s*/\\s*(\\d{1,4}(?:\\.\\d{1,3})?)");
  private static final Pattern ROCKWELL =
      Pattern.compile("HR(?:[ACD]|[BEFGHK](?:W|S)?|(?:15|30|45)(?:N|TW?))");

  /** Checks that nothing is missing. */
  public HardnessScale {
    Objects.requireNonNull(family);
    Objects.requireNonNull(symbol);
  }

  /**
   * Reads a scale.
   *
   * @param text as a person writes it; case and spaces do not matter
   * @param where file, line and column, or option, for the message
   * @return the scale
   * @throws InputRefusedException if the text names no scale that this program knows
   */
  public static HardnessScale parse(String text, String where) {
    String upper = text == null ? "" : text.strip().toUpperCase(Locale.ROOT);
    Matcher vickers = VICKERS.matcher(upper);
    if (vickers.matches() && Double.parseDouble(vickers.group(1)) > 0) {
      return new HardnessScale(Family.VICKERS, "HV" + vickers.group(1));
    }
    Matcher brinell = BRINELL.matcher(upper);
    if (brinell.matches()
        && Double.parseDouble(brinell.group(1)) > 0
        && Double.parseDouble(brinell.group(2)) > 0) {
      return new HardnessScale(Family.BRINELL, "HBW " + brinell.group(1) + "/" + brinell.group(2));
    }
    if (ROCKWELL.matcher(upper).matches()) {
      return new HardnessScale(Family.ROCKWELL, upper);
    }
    throw new InputRefusedException(
        "\"" + (text == null ? "" : text.strip()) + "\" is not a hardness scale.",
        where,
        "a scale such as HV10, HBW 10/3000, HRC or HRBW",
        "write the scale exactly as it stands on the certificate");
  }

  /**
   * Whether only order is meaningful on this scale, so that percentages and logarithms are not.
   *
   * @return true for Rockwell scales
   */
  public boolean isOrdinal() {
    return family == Family.ROCKWELL;
  }

  /**
   * Test force of the scale.
   *
   * @return in newtons; empty for Rockwell scales, whose two forces do not compare with a probe's
   */
  public OptionalDouble testForceNewtons() {
    return switch (family) {
      case VICKERS -> OptionalDouble.of(Double.parseDouble(symbol.substring(2)) * STANDARD_GRAVITY);
      case BRINELL ->
          OptionalDouble.of(
              Double.parseDouble(symbol.substring(symbol.indexOf('/') + 1)) * STANDARD_GRAVITY);
      case ROCKWELL -> OptionalDouble.empty();
    };
  }

  @Override
  public String toString() {
    return symbol;
  }
}
