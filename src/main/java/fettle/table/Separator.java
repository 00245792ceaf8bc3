package fettle.table;

/** What stands between two cells of a CSV file. */
public enum Separator {
  /** Comma: numbers have a decimal point. */
  COMMA(','),
  /** Semicolon: numbers have a decimal point or, in the whole file, a decimal comma. */
  SEMICOLON(';'),
  /** Tab: numbers have a decimal point or, in the whole file, a decimal comma. */
  TAB('\t');

  private final char character;

  Separator(char character) {
    this.character = character;
  }

  /**
   * The character itself.
   *
   * @return comma, semicolon or tab
   */
  public char character() {
    return character;
  }
}
