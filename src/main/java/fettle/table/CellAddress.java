package fettle.table;

import java.util.Objects;

/**
 * Place of one cell.
 *
 * @param file file name as the person gave it
 * @param line physical line on which the row starts, counted from 1
 * @param column position of the cell in its row, counted from 1
 * @param header name of the column as written in the header
 */
public record CellAddress(String file, int line, int column, String header) {
  /** Checks the counts. */
  public CellAddress {
    Objects.requireNonNull(file);
    Objects.requireNonNull(header);
    if (line < 1 || column < 1) {
      throw new IllegalArgumentException(
          "line " + line + ", column " + column + ": counted from 1");
    }
  }

  @Override
  public String toString() {
    return file + ", line " + line + ", column " + column + " (" + Shown.plain(header) + ")";
  }
}
