package fettle.table;

import fettle.refusal.InputRefusedException;
import java.util.List;

/** Rows whose cells do not stand under the names of the header. */
final class Misfit {
  private Misfit() {}

  /** The refusal of such a row; null if it fits. */
  static InputRefusedException of(
      Header header, int line, List<String> cells, Separator separator) {
    if (cells.size() != header.width()) {
      return count(header, line, cells, separator);
    }
    for (int i = 0; i < cells.size(); i++) {
      if (header.name(i).isEmpty() && !Shown.trimmed(cells.get(i)).isEmpty()) {
        return new InputRefusedException(
            Shown.quoted(Shown.trimmed(cells.get(i))) + " stands in a column without a name.",
            header.file() + ", line " + line + ", column " + (i + 1),
            "a name for each column that is used",
            "name column " + (i + 1) + " on line " + header.line() + ", or empty it");
      }
    }
    return null;
  }

  private static InputRefusedException count(
      Header header, int line, List<String> cells, Separator separator) {
    String counts =
        "The row has "
            + count(cells.size())
            + ", the header "
            + header.width()
            + (looksLikeDecimalComma(header, cells, separator)
                ? ", perhaps because a decimal comma splits a number in two."
                : ".");
    return new InputRefusedException(
        counts,
        header.file() + ", line " + line,
        count(header.width()) + ": " + Shown.names(header.names()),
        action(header, cells, separator));
  }

  private static String action(Header header, List<String> cells, Separator separator) {
    if (looksLikeDecimalComma(header, cells, separator)) {
      return "write a decimal point or separate the cells by semicolons; quote a text with a comma";
    }
    return cells.size() > header.width()
        ? "put a text that holds a separator between quotation marks, or take out what is too much"
        : "add what is missing; an empty cell keeps its separator";
  }

  private static String count(int cells) {
    return cells == 1 ? "1 cell" : cells + " cells";
  }

  /** More cells than names, and two neighbours that are digits only, the first perhaps signed. */
  private static boolean looksLikeDecimalComma(
      Header header, List<String> cells, Separator separator) {
    if (separator != Separator.COMMA || cells.size() <= header.width()) {
      return false;
    }
    for (int i = 0; i + 1 < cells.size(); i++) {
      String left = Shown.trimmed(cells.get(i));
      String right = cells.get(i + 1);
      boolean signed = left.startsWith("-") || left.startsWith("+");
      if (isDigits(signed ? left.substring(1) : left) && isDigits(right)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isDigits(String text) {
    return !text.isEmpty() && text.chars().allMatch(c -> c >= '0' && c <= '9');
  }
}
