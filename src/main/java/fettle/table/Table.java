package fettle.table;

import fettle.refusal.InputRefusedException;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * A whole CSV table: at most 64 MiB and 1,000,000 rows.
 *
 * @param file file name for messages
 * @param header the header line
 * @param rows the rows that are not blank
 * @param separator what stands between cells
 * @param decimalMark decimal mark of its numbers; undecided if none has one
 */
public record Table(
    String file, Header header, List<Row> rows, Separator separator, DecimalMark decimalMark) {
  private static final int MOST_ROWS = 1_000_000;

  /** Checks and copies. */
  public Table {
    Objects.requireNonNull(file);
    Objects.requireNonNull(header);
    rows = List.copyOf(rows);
  }

  /**
   * Reads a table.
   *
   * @param bytes the file's bytes
   * @param file file name for messages
   * @param form the columns expected
   * @return the table; a row that does not fit the header refuses when its cells are read
   * @throws InputRefusedException if it is no such table, or has no row
   */
  public static Table read(byte[] bytes, String file, TableForm form) {
    InputFile.requireSize(bytes.length, file);
    RowReader reader = RowReader.open(new ByteArrayInputStream(bytes), file, form);
    List<Row> rows = new ArrayList<>();
    for (Optional<Row> row = reader.next(); row.isPresent(); row = reader.next()) {
      if (rows.size() == MOST_ROWS) {
        throw new InputRefusedException(
            "The file has more than 1,000,000 rows.",
            row.get().where(),
            "at most 1,000,000 rows",
            "split the file");
      }
      rows.add(row.get());
    }
    if (rows.isEmpty()) {
      throw new InputRefusedException(
          "The file has a header but no rows.",
          file,
          "at least one row of " + form.title(),
          "fill in the file");
    }
    return new Table(file, reader.header(), rows, reader.separator(), reader.decimalMark());
  }

  /**
   * Makes something of each row; if any row is refused, all are, and the refusal names the lines.
   *
   * @param reading what to make of a row
   * @param <T> what comes out
   * @return one for each row
   * @throws InputRefusedException the first problem in full, with the lines of the others
   */
  public <T> List<T> map(Function<Row, T> reading) {
    RowProblems problems = new RowProblems();
    List<T> made = new ArrayList<>(rows.size());
    for (Row row : rows) {
      try {
        made.add(reading.apply(row));
      } catch (InputRefusedException problem) {
        problems.add(row.line(), problem);
        if (problems.isFull()) {
          break;
        }
      }
    }
    problems.refuseIfAny();
    return made;
  }
}
