package fettle.table;

import java.util.List;

/**
 * Foreign text made fit for a message: control and formatting characters spelled out, so that a
 * cell cannot drive a terminal or turn a line around, and long text cut.
 */
public final class Shown {
  private static final int LONGEST = 60;
  private static final int MOST_NAMES = 30;

  private Shown() {}

  /**
   * The text in quotation marks.
   *
   * @param text foreign text
   * @return at most 60 characters of it, harmless, in quotation marks
   */
  public static String quoted(String text) {
    return '"' + plain(text) + '"';
  }

  /**
   * The text without what could drive a terminal.
   *
   * @param text foreign text
   * @return at most 60 characters of it, harmless
   */
  public static String plain(String text) {
    StringBuilder shown = new StringBuilder();
    int taken = 0;
    for (int i = 0; i < text.length(); ) {
      int character = text.codePointAt(i);
      i += Character.charCount(character);
      if (taken++ == LONGEST) {
        return shown.append('…').toString();
      }
      if (isHarmless(character)) {
        shown.appendCodePoint(character);
      } else {
        shown.append(String.format(java.util.Locale.ROOT, "<U+%04X>", character));
      }
    }
    return shown.toString();
  }

  private static boolean isHarmless(int character) {
    return switch (Character.getType(character)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED ->
          false;
      default -> true;
    };
  }

  /** Names in a row: {@code a, b and c}. */
  static String names(List<String> names) {
    StringBuilder shown = new StringBuilder();
    int count = Math.min(names.size(), MOST_NAMES);
    for (int i = 0; i < count; i++) {
      boolean last = i == names.size() - 1;
      shown.append(i == 0 ? "" : last ? " and " : ", ").append(plain(names.get(i)));
    }
    return count < names.size()
        ? shown + " and " + (names.size() - count) + " more"
        : shown.toString();
  }

  /** Removes blanks, no-break spaces and byte order marks at both ends. */
  static String trimmed(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && isBlank(text.charAt(from))) {
      from++;
    }
    while (to > from && isBlank(text.charAt(to - 1))) {
      to--;
    }
    return text.substring(from, to);
  }

  static boolean isBlank(char character) {
    return character <= ' '
        ? character == ' ' || character == '\t' || character == '\n' || character == '\r'
        : character >= '\u00a0' && (Character.isSpaceChar(character) || character == '\ufeff');
  }
}
