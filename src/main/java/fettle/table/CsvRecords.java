package fettle.table;

import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Splits bytes into records and cells by RFC 4180, counting physical lines (LF, CRLF or CR).
 *
 * <p>Works on bytes: in UTF-8 no byte of a longer character equals a separator, a quotation mark or
 * a line end. Memory is bounded by the limits on a cell and a record, whatever the file's size.
 */
final class CsvRecords {
  private static final int BLOCK = 1 << 16;
  private static final int LONGEST_CELL = 1 << 20;
  private static final int LONGEST_RECORD = 1 << 22;
  private static final int MOST_CELLS = 1_000;

  /** What ended a cell. */
  private enum End {
    SEPARATOR,
    LINE,
    FILE
  }

  private final InputStream in;
  private final String file;
  private final byte[] block = new byte[BLOCK];
  private int at;
  private int filled;
  private byte[] cell = new byte[256];
  private int length;
  private boolean ascii;
  private int line = 1;
  private int cellLine;
  private int recordLine;
  private int recordLength;
  private char separator = ',';
  private InputRefusedException defect;
  private final List<String> cells = new ArrayList<>();

  CsvRecords(InputStream in, String file) throws IOException {
    this.in = in;
    this.file = file;
    filled = in.readNBytes(block, 0, BLOCK);
    Signature.refuseOtherThanText(block, filled, file);
    if (filled >= 3
        && block[0] == (byte) 0xEF
        && block[1] == (byte) 0xBB
        && block[2] == (byte) 0xBF) {
      at = 3;
    }
  }

  /** The separator that the first line with content has most of; comma where it has none. */
  Separator detectSeparator() {
    int[] counts = new int[Separator.values().length];
    boolean quoted = false;
    boolean content = false;
    for (int i = at; i < filled; i++) {
      byte b = block[i];
      if ((b == '\n' || b == '\r') && !quoted && content) {
        break;
      }
      content |= b > ' ' || b < 0;
      quoted ^= b == '"';
      for (Separator candidate : Separator.values()) {
        counts[candidate.ordinal()] += !quoted && b == candidate.character() ? 1 : 0;
      }
    }
    Separator best = Separator.COMMA;
    for (Separator candidate : Separator.values()) {
      best = counts[candidate.ordinal()] > counts[best.ordinal()] ? candidate : best;
    }
    separator = best.character();
    return best;
  }

  /** Reads the next record; false at the end of the file. */
  boolean next() throws IOException {
    if (peek() < 0) {
      return false;
    }
    cells.clear();
    defect = null;
    recordLine = line;
    recordLength = 0;
    End end;
    do {
      end = readCell();
      recordLength += length;
      if (recordLength > LONGEST_RECORD || cells.size() == MOST_CELLS) {
        throw refusal(
            recordLine,
            "The row that starts on line " + recordLine + " is too large.",
            "at most 1,000 cells and 4 MiB in a row",
            "check the line ends and quotation marks of the file");
      }
      cells.add(decoded());
    } while (end == End.SEPARATOR);
    return true;
  }

  int recordLine() {
    return recordLine;
  }

  List<String> cells() {
    return cells;
  }

  /** What is wrong with the quotation marks of this record; null if nothing is. */
  InputRefusedException defect() {
    return defect;
  }

  private End readCell() throws IOException {
    length = 0;
    ascii = true;
    cellLine = line;
    int b = read();
    return b == '"' ? readQuoted() : readPlain(b);
  }

  private End readPlain(int first) throws IOException {
    int b = first;
    while (true) {
      if (b == separator) {
        return End.SEPARATOR;
      }
      if (b < 0) {
        return End.FILE;
      }
      if (b == '\n' || b == '\r') {
        endLine(b);
        return End.LINE;
      }
      if (b == '"') {
        markDefect(
            "has a quotation mark inside a cell that does not begin with one.",
            "put the whole cell between quotation marks and double those inside");
      }
      append(b);
      b = read();
    }
  }

  private End readQuoted() throws IOException {
    while (true) {
      int b = read();
      if (b < 0) {
        throw refusal(
            cellLine,
            "The quotation mark opened on line " + cellLine + " is never closed.",
            "a closing quotation mark before the end of the cell",
            "close it, or double a quotation mark that belongs to the text");
      }
      if (b == '"') {
        int after = read();
        if (after != '"') {
          if (after >= 0 && after != separator && after != '\n' && after != '\r') {
            markDefect(
                "has text after a closing quotation mark.",
                "double a quotation mark that belongs to the text");
          }
          return readPlain(after);
        }
      }
      append(b);
      if (b == '\n' || b == '\r') {
        if (b == '\r' && peek() == '\n') {
          append(read());
        }
        line++;
      }
    }
  }

  private void endLine(int b) throws IOException {
    if (b == '\r' && peek() == '\n') {
      at++;
    }
    line++;
  }

  private void markDefect(String fault, String action) {
    if (defect == null) {
      defect =
          refusal(
              line,
              "Cell " + (cells.size() + 1) + " " + fault,
              "cells without quotation marks, or quoted as in \"3/4\"\" plate\"",
              action);
    }
  }

  private void append(int b) {
    if (b == 0) {
      throw Signature.nul(file, line);
    }
    if (length == cell.length) {
      if (length >= LONGEST_CELL) {
        throw refusal(
            cellLine,
            "The cell that starts on line " + cellLine + " is longer than 1 MiB.",
            "cells of at most 1 MiB",
            "check for a missing quotation mark");
      }
      cell = Arrays.copyOf(cell, length * 2);
    }
    cell[length++] = (byte) b;
    ascii &= b < 0x80;
  }

  private String decoded() {
    if (length == 0) {
      return "";
    }
    if (ascii) {
      return new String(cell, 0, length, StandardCharsets.ISO_8859_1);
    }
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer bytes = ByteBuffer.wrap(cell, 0, length);
    CharBuffer characters = CharBuffer.allocate(length);
    CoderResult result = decoder.decode(bytes, characters, true);
    if (result.isError()) {
      int where = cellLine + lineEndsBefore(bytes.position());
      throw refusal(
          where,
          String.format(
              java.util.Locale.ROOT,
              "Line %d holds the byte 0x%02X, which is not UTF-8 here.",
              where,
              cell[bytes.position()] & 0xFF),
          "text in UTF-8, with or without byte order mark",
          "save the file as CSV UTF-8");
    }
    return characters.flip().toString();
  }

  private int lineEndsBefore(int position) {
    int count = 0;
    for (int i = 0; i < position; i++) {
      boolean secondOfTwo = cell[i] == '\n' && i > 0 && cell[i - 1] == '\r';
      count += (cell[i] == '\n' || cell[i] == '\r') && !secondOfTwo ? 1 : 0;
    }
    return count;
  }

  private int read() throws IOException {
    return at < filled || refill() ? block[at++] & 0xFF : -1;
  }

  private int peek() throws IOException {
    return at < filled || refill() ? block[at] & 0xFF : -1;
  }

  private boolean refill() throws IOException {
    if (filled < 0) {
      return false;
    }
    at = 0;
    filled = in.read(block, 0, BLOCK);
    return filled > 0;
  }

  private InputRefusedException refusal(int where, String what, String expected, String action) {
    return new InputRefusedException(what, file + ", line " + where, expected, action);
  }
}
