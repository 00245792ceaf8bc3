package fettle.quantity;

import fettle.refusal.InputRefusedException;

/** Measuring principle of the portable instrument. */
public enum Method {
  /** Ultrasonic contact impedance. */
  UCI("uci", "ultrasonic contact impedance"),
  /** Dynamic rebound. */
  REBOUND("rebound", "dynamic rebound");

  private final String id;
  private final String title;

  Method(String id, String title) {
    this.id = id;
    this.title = title;
  }

  /**
   * The word in files and options.
   *
   * @return {@code uci} or {@code rebound}
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
   * Reads a method.
   *
   * @param text the word
   * @param where where it stands
   * @return the method
   * @throws InputRefusedException if it is neither
   */
  public static Method parse(String text, String where) {
    for (Method method : values()) {
      if (method.id.equalsIgnoreCase(text == null ? "" : text.strip())) {
        return method;
      }
    }
    throw new InputRefusedException(
        "\"" + text + "\" is not a method.",
        where,
        "uci or rebound",
        "choose the measuring principle of the instrument");
  }
}
