package fettle.table;

import fettle.refusal.InputRefusedException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One row of a table.
 *
 * <p>A row that does not fit the header, or whose quotation marks are wrong, can be counted but not
 * read: each access to its cells refuses with the reason.
 */
public final class Row {
  private final Header header;
  private final int line;
  private final String[] texts;
  private final Marking marking;
  private final InputRefusedException defect;

  Row(Header header, int line, String[] texts, Marking marking, InputRefusedException defect) {
    this.header = header;
    this.line = line;
    this.texts = texts;
    this.marking = marking;
    this.defect = defect;
  }

  /**
   * Physical line on which the row starts.
   *
   * @return counted from 1
   */
  public int line() {
    return line;
  }

  /**
   * Place of the row for a message.
   *
   * @return file and line
   */
  public String where() {
    return header.file() + ", line " + line;
  }

  /**
   * Whether the cells can be read.
   *
   * @return false if the row does not fit the header or its quotation marks are wrong
   */
  public boolean isSound() {
    return defect == null;
  }

  /**
   * All texts as they stand in the file, unknown columns included.
   *
   * @return one for each name of the header
   * @throws InputRefusedException if the row does not fit the header
   */
  public List<String> texts() {
    requireSound();
    return List.of(texts);
  }

  /**
   * The cell of a column that the form requires.
   *
   * @param column name of the column
   * @return the cell, which may be blank
   * @throws InputRefusedException if the row does not fit the header
   * @throws IllegalArgumentException if the table has no such column
   */
  public Cell cell(String column) {
    requireSound();
    OptionalInt index = header.index(column);
    if (index.isEmpty()) {
      throw new IllegalArgumentException("column " + column + ": not in this table");
    }
    return cell(index.getAsInt());
  }

  /**
   * The cell of a column that may be there.
   *
   * @param column name of the column
   * @return the cell; empty if the column is absent or the cell blank
   * @throws InputRefusedException if the row does not fit the header
   */
  public Optional<Cell> filled(String column) {
    requireSound();
    OptionalInt index = header.index(column);
    if (index.isEmpty()) {
      return Optional.empty();
    }
    Cell cell = cell(index.getAsInt());
    return cell.isBlank() ? Optional.empty() : Optional.of(cell);
  }

  /**
   * Optional text.
   *
   * @param column name of the column
   * @return empty if the column is absent or the cell blank
   * @throws InputRefusedException if the text is not acceptable
   */
  public Optional<String> optionalText(String column) {
    return filled(column).map(Cell::text);
  }

  /**
   * Optional decimal number.
   *
   * @param column name of the column
   * @return empty if the column is absent or the cell blank
   * @throws InputRefusedException if something else than a number stands there
   */
  public OptionalDouble optionalDecimal(String column) {
    Optional<Cell> cell = filled(column);
    return cell.isPresent() ? OptionalDouble.of(cell.get().decimal()) : OptionalDouble.empty();
  }

  /**
   * The number at a position, quickly and without a complaint: for tables too large to stop at
   * every cell.
   *
   * @param index position of the column, counted from 0
   * @return the nearest double; NaN if the cell holds anything else, numbers beyond the range of
   *     double included
   * @throws InputRefusedException if the row does not fit the header
   */
  public double numberOrNaN(int index) {
    requireSound();
    double value = DecimalParser.parse(Shown.trimmed(texts[index]), marking.mark());
    return Double.isInfinite(value) ? Double.NaN : value;
  }

  private Cell cell(int index) {
    return new Cell(
        texts[index],
        new CellAddress(header.file(), line, index + 1, header.names().get(index)),
        marking);
  }

  private void requireSound() {
    if (defect != null) {
      // A fresh one each time: the kept one carries the trace of the reader.
      throw new InputRefusedException(
          defect.what(), defect.where(), defect.expected(), defect.action());
    }
  }
}
