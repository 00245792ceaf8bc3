package fettle.table;

import java.util.List;

/**
 * CSV written by RFC 4180, with one line feed as line end, such that a spreadsheet opening it runs
 * nothing.
 */
public final class CsvText {
  private CsvText() {}

  /**
   * One cell. A text that a spreadsheet would take for a formula (first character = + - @, tab or
   * line end) gets an apostrophe in front; a number does not, negative ones included. Quotation
   * marks are put where the text holds a separator of any kind, a quotation mark, a line end or
   * blanks at an end.
   *
   * @param text the cell's text
   * @return the text to stand between two separators
   */
  public static String escape(String text) {
    String safe = isFormula(text) ? "'" + text : text;
    return needsQuotes(safe) ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
  }

  /**
   * One row with its line end.
   *
   * @param cells texts of the cells
   * @param separator what to put between them
   * @return the line
   */
  public static String row(List<String> cells, Separator separator) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < cells.size(); i++) {
      if (i > 0) {
        line.append(separator.character());
      }
      String cell = cells.get(i);
      // A decimal comma needs no quotation marks where the comma does not separate.
      boolean number =
          separator != Separator.COMMA
              && cell.indexOf(',') >= 0
              && !Double.isNaN(DecimalParser.parse(cell, DecimalMark.COMMA));
      line.append(number ? cell : escape(cell));
    }
    return line.append('\n').toString();
  }

  private static boolean isFormula(String text) {
    return !text.isEmpty()
        && "=+-@＝＋－＠\t\r\n".indexOf(text.charAt(0)) >= 0
        && Double.isNaN(DecimalParser.parse(text, DecimalMark.UNDECIDED));
  }

  private static boolean needsQuotes(String text) {
    if (text.isEmpty()) {
      return false;
    }
    for (int i = 0; i < text.length(); i++) {
      if (",;\t\"\r\n".indexOf(text.charAt(i)) >= 0) {
        return true;
      }
    }
    return Shown.isBlank(text.charAt(0)) || Shown.isBlank(text.charAt(text.length() - 1));
  }
}
