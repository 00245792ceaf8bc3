package fettle.curve;

/** What may be said of a response: only in range is there a hardness. */
public enum Status {
  /** Within the valid range. */
  IN_RANGE("in range"),
  /** The response lies below the lowest valid response. */
  BELOW_RANGE("below range"),
  /** The response lies above the highest valid response. */
  ABOVE_RANGE("above range"),
  /** The response is not a finite number. */
  NOT_A_NUMBER("not a number");

  private final String text;

  Status(String text) {
    this.text = text;
  }

  /**
   * The word in files.
   *
   * @return for example {@code in range}
   */
  public String text() {
    return text;
  }
}
