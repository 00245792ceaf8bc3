package fettle.table;

import fettle.refusal.InputRefusedException;
import java.nio.charset.StandardCharsets;

/** Recognises by its first bytes a file that is no CSV at all. */
final class Signature {
  private static final String EXPECTED = "a CSV file in UTF-8";

  private Signature() {}

  static void refuseOtherThanText(byte[] bytes, int length, String file) {
    String start = new String(bytes, 0, length, StandardCharsets.ISO_8859_1);
    if (start.startsWith("PK\u0003\u0004")) {
      throw zip(start, file);
    }
    if (start.startsWith("\u00d0\u00cf\u0011\u00e0")) {
      throw refusal(
          file,
          "looks like a spreadsheet (.xls) or another office document",
          "open it in a spreadsheet program and save the sheet as CSV UTF-8");
    }
    if (start.startsWith("%PDF")) {
      throw refusal(file, "is a PDF document", "give the table as CSV");
    }
    if (start.startsWith("\u001f\u008b")) {
      throw refusal(file, "is compressed (gzip)", "unpack it first");
    }
    if (start.startsWith("\u00ff\u00fe") || start.startsWith("\u00fe\u00ff")) {
      throw refusal(file, "is text in UTF-16", "save it as CSV UTF-8");
    }
  }

  private static InputRefusedException zip(String start, String file) {
    if (start.contains("opendocument.spreadsheet")) {
      return refusal(
          file,
          "looks like a spreadsheet (.ods)",
          "open it in a spreadsheet program and save the sheet as CSV UTF-8");
    }
    if (start.contains("xl/") || start.contains("[Content_Types].xml")) {
      return refusal(
          file,
          "looks like a spreadsheet (.xlsx)",
          "open it in a spreadsheet program and save the sheet as CSV UTF-8");
    }
    return refusal(file, "is a zip archive", "unpack it first");
  }

  static InputRefusedException nul(String file, int line) {
    return new InputRefusedException(
        "Line " + line + " holds a zero byte: the file is no text.",
        file + ", line " + line,
        EXPECTED,
        "save the table as CSV UTF-8");
  }

  private static InputRefusedException refusal(String file, String finding, String action) {
    return new InputRefusedException("The file " + finding + ".", file, EXPECTED, action);
  }
}
