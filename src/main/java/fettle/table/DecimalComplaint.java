package fettle.table;

import fettle.refusal.InputRefusedException;

/** Says why a cell is not a number, and what the person most likely has to change. */
final class DecimalComplaint {
  private static final String NUMBER = "a decimal number such as 1234.5";

  private DecimalComplaint() {}

  static InputRefusedException about(Cell cell, double value, Marking marking) {
    String text = cell.raw();
    if (Double.isInfinite(value)) {
      return cell.refusal(
          cell.quoted() + " is too large.", "a number below 1e308 in size", "correct the number");
    }
    if (value == 0) {
      return cell.refusal(
          cell.quoted() + " is too close to 0.",
          "0 or a number above 1e-308 in size",
          "correct the number, or write 0");
    }
    if (text.equalsIgnoreCase("nan") || text.toLowerCase(java.util.Locale.ROOT).contains("inf")) {
      return cell.refusal(
          cell.quoted() + " is not a finite number.",
          NUMBER,
          "put in the value, or leave out the row");
    }
    if (isGrouped(text)) {
      return cell.refusal(
          cell.quoted() + " has a thousands separator.",
          NUMBER + ", with one decimal mark and nothing between the digits",
          "take the thousands separators out");
    }
    if (!Double.isNaN(DecimalParser.parse(text, DecimalMark.UNDECIDED))) {
      return otherMark(cell, text, marking);
    }
    if (text.charAt(0) == '−' || text.charAt(0) == '–') {
      return cell.refusal(
          cell.quoted() + " begins with a dash that is no minus sign.",
          NUMBER,
          "type the hyphen of the keyboard");
    }
    if (beginsWithNumber(text)) {
      return cell.refusal(
          cell.quoted() + " is more than a number.",
          NUMBER,
          "put the number alone into the cell, without unit or remark");
    }
    return cell.refusal(cell.quoted() + " is not a number.", NUMBER, "correct the cell");
  }

  private static InputRefusedException otherMark(Cell cell, String text, Marking marking) {
    if (marking.line() > 0) {
      boolean comma = text.indexOf(',') >= 0;
      return cell.refusal(
          cell.quoted()
              + (comma ? " has a decimal comma" : " has a decimal point")
              + ", but line "
              + marking.line()
              + (comma ? " has a decimal point." : " has a decimal comma."),
          "the same decimal mark in the whole file, and no thousands separators",
          "write all numbers with the same decimal mark");
    }
    return cell.refusal(
        cell.quoted() + " has a comma, which is no decimal mark here.",
        "a number with a decimal point such as 12.5, and no thousands separators",
        "write a decimal point, or separate the cells of the file by semicolons");
  }

  /** Both marks, one mark twice, or digits apart by a blank or an apostrophe. */
  private static boolean isGrouped(String text) {
    int marks = 0;
    boolean apart = false;
    for (int i = 0; i < text.length(); i++) {
      char character = text.charAt(i);
      boolean digit = character >= '0' && character <= '9';
      boolean sign = i == 0 && (character == '-' || character == '+');
      boolean gap = character == '\'' || character == '’' || Shown.isBlank(character);
      marks += character == '.' || character == ',' ? 1 : 0;
      apart |= gap;
      if (!digit && !sign && !gap && character != '.' && character != ',') {
        return false;
      }
    }
    return marks > 1 || apart;
  }

  private static boolean beginsWithNumber(String text) {
    int at = text.charAt(0) == '-' || text.charAt(0) == '+' ? 1 : 0;
    return at < text.length()
        && text.charAt(at) >= '0'
        && text.charAt(at) <= '9'
        && !text.startsWith("0x", at)
        && !text.startsWith("0X", at);
  }
}
