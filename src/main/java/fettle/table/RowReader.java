package fettle.table;

import fettle.refusal.InputRefusedException;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;

/**
 * Reads a CSV table row by row in constant memory, whatever its size.
 *
 * <p>UTF-8 with or without byte order mark; LF, CRLF or CR; comma, semicolon or tab, whichever the
 * header has most of. Rows whose cells are all blank are passed over, their lines counted. In a
 * file separated by semicolons or tabs the first number with a decimal mark, in a numeric column of
 * the form, settles the mark for the file; the other one is then refused, because 1.234 beside 2,5
 * may be a thousand.
 */
public final class RowReader implements Closeable {
  private final InputStream in;
  private final String file;
  private final CsvRecords records;
  private final Separator separator;
  private final Header header;
  private final int[] numericColumns;
  private Marking marking;

  private RowReader(InputStream in, String file, TableForm form) throws IOException {
    this.in = in;
    this.file = file;
    records = new CsvRecords(in, file);
    separator = records.detectSeparator();
    header = readHeader(form);
    marking = separator == Separator.COMMA ? Marking.POINT : Marking.UNDECIDED;
    numericColumns =
        form.columns().stream()
            .filter(TableForm.Column::numeric)
            .flatMapToInt(column -> header.index(column.name()).stream())
            .sorted()
            .toArray();
  }

  /**
   * Opens a table and reads its header.
   *
   * @param in the bytes, closed with this reader
   * @param file file name for messages
   * @param form the columns expected
   * @return the reader, before the first row
   * @throws InputRefusedException if it is no such table or cannot be read
   */
  public static RowReader open(InputStream in, String file, TableForm form) {
    try {
      return new RowReader(in, file, form);
    } catch (IOException failure) {
      throw InputFile.unreadable(file, failure);
    }
  }

  private Header readHeader(TableForm form) throws IOException {
    while (records.next()) {
      if (!isBlank(records.cells())) {
        if (records.defect() != null) {
          throw records.defect();
        }
        return Header.of(file, records.recordLine(), records.cells(), form);
      }
    }
    throw new InputRefusedException(
        "The file is empty.",
        file,
        "a header line and rows of " + form.title(),
        "check that the right file was given");
  }

  /**
   * The header.
   *
   * @return names and positions
   */
  public Header header() {
    return header;
  }

  /**
   * The separator found.
   *
   * @return what stands between cells
   */
  public Separator separator() {
    return separator;
  }

  /**
   * The decimal mark as far as it is known by now.
   *
   * @return undecided until a number with a mark has been read
   */
  public DecimalMark decimalMark() {
    return marking.mark();
  }

  /**
   * Reads the next row that is not blank.
   *
   * @return empty at the end of the file
   * @throws InputRefusedException if reading cannot go on: text that is not UTF-8, a quotation mark
   *     never closed, a limit passed. A row that merely does not fit the header is returned, and
   *     refuses when its cells are read
   */
  public Optional<Row> next() {
    try {
      while (records.next()) {
        if (!isBlank(records.cells())) {
          return Optional.of(row());
        }
      }
      return Optional.empty();
    } catch (IOException failure) {
      throw InputFile.unreadable(file, failure);
    }
  }

  private Row row() {
    List<String> cells = records.cells();
    InputRefusedException defect = records.defect();
    if (defect == null) {
      defect = Misfit.of(header, records.recordLine(), cells, separator);
    }
    if (defect == null && separator != Separator.COMMA && marking.line() == 0) {
      settleMark(cells);
    }
    return new Row(header, records.recordLine(), cells.toArray(String[]::new), marking, defect);
  }

  private void settleMark(List<String> cells) {
    for (int column : numericColumns) {
      String text = Shown.trimmed(cells.get(column));
      boolean comma = text.indexOf(',') >= 0;
      boolean marked = comma || text.indexOf('.') >= 0;
      DecimalMark mark = comma ? DecimalMark.COMMA : DecimalMark.POINT;
      if (marked && !Double.isNaN(DecimalParser.parse(text, mark))) {
        marking = new Marking(mark, records.recordLine());
        return;
      }
    }
  }

  private static boolean isBlank(List<String> cells) {
    for (String cell : cells) {
      for (int i = 0; i < cell.length(); i++) {
        if (!Shown.isBlank(cell.charAt(i))) {
          return false;
        }
      }
    }
    return true;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
