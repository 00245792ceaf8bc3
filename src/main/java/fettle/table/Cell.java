package fettle.table;

import fettle.refusal.InputRefusedException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Objects;

/**
 * One cell: its text and its place. Typed reading either gives the value or refuses with the place,
 * the text seen and what would be accepted.
 *
 * <p>An option of the command line is read by the same rules: {@link #ofOption}.
 */
public final class Cell {
  private static final int LONGEST_TEXT = 2_000;

  private final String text;
  private final Object place;
  private final Marking marking;

  Cell(String text, CellAddress address, Marking marking) {
    this.text = Shown.trimmed(text);
    this.place = address;
    this.marking = marking;
  }

  private Cell(String text, String where) {
    this.text = Shown.trimmed(text);
    this.place = where;
    this.marking = Marking.POINT;
  }

  /**
   * The value of an option, to be read as a cell is; numbers with a decimal point.
   *
   * @param option name of the option with its hyphens
   * @param text its value
   * @return the cell
   */
  public static Cell ofOption(String option, String text) {
    return new Cell(Objects.requireNonNull(text), "option " + option);
  }

  /**
   * The text, blanks around it removed, whatever it holds.
   *
   * @return possibly empty
   */
  public String raw() {
    return text;
  }

  /**
   * The place for a message.
   *
   * @return file, line and column, or option
   */
  public String where() {
    return place.toString();
  }

  /**
   * The text between quotation marks as a message shows it: control characters spelled out, long
   * text cut.
   *
   * @return in quotation marks
   */
  public String quoted() {
    return Shown.quoted(text);
  }

  /**
   * Whether nothing but blanks stands here.
   *
   * @return true for an empty cell
   */
  public boolean isBlank() {
    return text.isEmpty();
  }

  /**
   * A refusal of this cell.
   *
   * @param what what is wrong, one sentence
   * @param expected what would have been accepted
   * @param action what the person can do
   * @return the refusal, to be thrown
   */
  public InputRefusedException refusal(String what, String expected, String action) {
    return new InputRefusedException(what, where(), expected, action);
  }

  /**
   * One line of text.
   *
   * @return not empty, of at most 2,000 characters, without control characters, line ends and marks
   *     that turn the direction of writing
   * @throws InputRefusedException if it is not so
   */
  public String text() {
    return checkedText("\t");
  }

  /**
   * Text of one or several lines.
   *
   * @return as {@link #text}, but line ends may stand in it
   * @throws InputRefusedException if it is not so
   */
  public String prose() {
    return checkedText("\t\r\n");
  }

  private String checkedText(String allowed) {
    requireContent("a text");
    if (text.length() > LONGEST_TEXT) {
      throw refusal(
          "The text has " + text.length() + " characters.",
          "at most 2,000 characters",
          "shorten it, or check for a missing quotation mark");
    }
    for (int i = 0; i < text.length(); i++) {
      char character = text.charAt(i);
      if (isControl(character) && allowed.indexOf(character) < 0) {
        boolean lineEnd = character == '\n' || character == '\r';
        throw refusal(
            lineEnd
                ? "The text has more than one line."
                : String.format(
                    java.util.Locale.ROOT,
                    "The text holds the control character U+%04X.",
                    (int) character),
            lineEnd ? "one line of text" : "printable characters",
            lineEnd ? "take the line end out" : "type the text again");
      }
    }
    return text;
  }

  /** Control characters, marks that turn the direction of writing, and what no XML may hold. */
  private static boolean isControl(char character) {
    return Character.isISOControl(character)
        || character >= '\u202a' && character <= '\u202e'
        || character >= '\u2066' && character <= '\u2069'
        || character == '\u2028'
        || character == '\u2029'
        || character >= '\ufffe';
  }

  /**
   * Finite decimal number.
   *
   * @return the nearest double
   * @throws InputRefusedException if it is none: also for NaN, infinity, hexadecimal numbers,
   *     thousands separators and units
   */
  public double decimal() {
    requireContent("a decimal number");
    double value = DecimalParser.parse(text, marking.mark());
    if (!Double.isFinite(value) || value == 0 && DecimalParser.hasUnderflown(text)) {
      throw DecimalComplaint.about(this, value, marking);
    }
    return value;
  }

  /**
   * Finite decimal number with all its digits.
   *
   * @return as written, exactly, and as a double
   * @throws InputRefusedException as {@link #decimal}; also for more than 400 characters
   */
  public DecimalText exactDecimal() {
    double value = decimal();
    if (text.length() > 400) {
      throw refusal(
          "The number has " + text.length() + " characters.",
          "a number of at most 400 characters",
          "round it to the digits that mean something");
    }
    // Zero loses its power of ten: 0e999999999 is a number, but nobody could add to it.
    BigDecimal exact = value == 0 ? BigDecimal.ZERO : new BigDecimal(DecimalParser.withPoint(text));
    return new DecimalText(text, value, exact);
  }

  /**
   * Number above 0.
   *
   * @return the number
   * @throws InputRefusedException if it is not one
   */
  public double positive() {
    double value = decimal();
    if (!(value > 0)) {
      throw refusal(
          quoted() + " is not above 0.", "a number above 0", "correct the number or its sign");
    }
    return value;
  }

  /**
   * Number not below 0.
   *
   * @return the number
   * @throws InputRefusedException if it is not one
   */
  public double notNegative() {
    double value = decimal();
    if (!(value >= 0)) {
      throw refusal(quoted() + " is below 0.", "0 or a number above 0", "correct the sign");
    }
    return value;
  }

  /**
   * Number within a range.
   *
   * @param low least value, included
   * @param high greatest value, included
   * @param unit unit for the message, empty where there is none
   * @return the number
   * @throws InputRefusedException if it is not one
   */
  public double between(double low, double high, String unit) {
    double value = decimal();
    if (!(value >= low && value <= high)) {
      String suffix = unit.isEmpty() ? "" : " " + unit;
      throw refusal(
          quoted() + " is out of range.",
          "a number from " + shortest(low) + " to " + shortest(high) + suffix,
          "check the number and its unit");
    }
    return value;
  }

  private static String shortest(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /**
   * Whole number within a range.
   *
   * @param low least value, included
   * @param high greatest value, included
   * @return the number
   * @throws InputRefusedException if it is not one
   */
  public int integer(int low, int high) {
    double value = decimal();
    if (value != Math.rint(value) || value < low || value > high) {
      throw refusal(
          quoted() + (value == Math.rint(value) ? " is out of range." : " is not a whole number."),
          "a whole number from " + low + " to " + high,
          "correct the number");
    }
    return (int) value;
  }

  /**
   * Day of the calendar, ISO 8601.
   *
   * @return the day
   * @throws InputRefusedException if it is not written yyyy-mm-dd
   */
  public LocalDate date() {
    requireContent("a date written yyyy-mm-dd");
    return DateText.date(this);
  }

  /**
   * Local date and time as written, ISO 8601; seconds may be left out, T may be a blank, an offset
   * is checked and dropped.
   *
   * @return what a clock on the wall showed
   * @throws InputRefusedException if it is not so
   */
  public LocalDateTime dateTime() {
    requireContent("a date and time written yyyy-mm-ddThh:mm");
    return DateText.dateTime(this);
  }

  private void requireContent(String expected) {
    if (text.isEmpty()) {
      throw refusal("The cell is empty.", expected, "fill in the cell");
    }
  }

  @Override
  public String toString() {
    return quoted() + " at " + where();
  }
}
