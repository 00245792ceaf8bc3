package fettle.quantity;

import fettle.refusal.InputRefusedException;

/** What the instrument returns before any hardness is computed. */
public enum ResponseKind {
  /** Shift of the resonance on contact, positive for stiffness-controlled contact. */
  FREQUENCY_SHIFT("frequency-shift", "frequency shift", "Hz"),
  /** Rebound velocity over impact velocity, times 1000. */
  REBOUND_RATIO("rebound-ratio", "rebound ratio × 1000", "1"),
  /** A hardness shown under a recorded base setting, for instruments that show nothing rawer. */
  INDICATED_HARDNESS("indicated-hardness", "indicated hardness", "1");

  private final String id;
  private final String title;
  private final String unit;

  ResponseKind(String id, String title, String unit) {
    this.id = id;
    this.title = title;
    this.unit = unit;
  }

  /**
   * The word in files and options.
   *
   * @return for example {@code frequency-shift}
   */
  public String id() {
    return id;
  }

  /**
   * The name in reports.
   *
   * @return in lower case
   */
  public String title() {
    return title;
  }

  /**
   * Unit of the response.
   *
   * @return {@code Hz}, or {@code 1} for dimension one
   */
  public String unit() {
    return unit;
  }

  /**
   * Axis label.
   *
   * @return name with unit, where it has one
   */
  public String axisLabel() {
    return this == FREQUENCY_SHIFT ? "Frequency shift / Hz" : capitalised();
  }

  private String capitalised() {
    return Character.toUpperCase(title.charAt(0)) + title.substring(1);
  }

  /**
   * The usual response of a method.
   *
   * @param method the measuring principle
   * @return frequency shift for UCI, rebound ratio for rebound
   */
  public static ResponseKind usualOf(Method method) {
    return method == Method.UCI ? FREQUENCY_SHIFT : REBOUND_RATIO;
  }

  /**
   * Reads a response kind.
   *
   * @param text the word
   * @param where where it stands
   * @return the kind
   * @throws InputRefusedException if it is none of the three
   */
  public static ResponseKind parse(String text, String where) {
    for (ResponseKind kind : values()) {
      if (kind.id.equalsIgnoreCase(text == null ? "" : text.strip())) {
        return kind;
      }
    }
    throw new InputRefusedException(
        "\"" + text + "\" is not a response kind.",
        where,
        "frequency-shift, rebound-ratio or indicated-hardness",
        "name what the instrument returns before any hardness is computed");
  }
}
