package fettle.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The columns that one kind of file has: names, whether each must be there, whether it holds
 * numbers. Further columns are allowed and kept.
 *
 * @param title what the file holds, in the plural, for messages: {@code readings}
 * @param columns the known columns in the order of a template
 */
public record TableForm(String title, List<Column> columns) {
  /**
   * A known column.
   *
   * @param name name in lower case
   * @param required whether a file without it is refused
   * @param numeric whether its cells are decimal numbers
   */
  public record Column(String name, boolean required, boolean numeric) {}

  /** Checks and copies. */
  public TableForm {
    Objects.requireNonNull(title);
    columns = List.copyOf(columns);
  }

  /**
   * A form without columns so far.
   *
   * @param title what the file holds, in the plural
   * @return the form
   */
  public static TableForm of(String title) {
    return new TableForm(title, List.of());
  }

  /**
   * Adds columns of text that must be there.
   *
   * @param names names in lower case
   * @return a further form
   */
  public TableForm requiring(String... names) {
    return with(true, false, names);
  }

  /**
   * Adds columns of numbers that must be there.
   *
   * @param names names in lower case
   * @return a further form
   */
  public TableForm requiringNumbers(String... names) {
    return with(true, true, names);
  }

  /**
   * Adds columns of text that may be there.
   *
   * @param names names in lower case
   * @return a further form
   */
  public TableForm allowing(String... names) {
    return with(false, false, names);
  }

  /**
   * Adds columns of numbers that may be there.
   *
   * @param names names in lower case
   * @return a further form
   */
  public TableForm allowingNumbers(String... names) {
    return with(false, true, names);
  }

  private TableForm with(boolean required, boolean numeric, String... names) {
    List<Column> more = new ArrayList<>(columns);
    for (String name : names) {
      more.add(new Column(name, required, numeric));
    }
    return new TableForm(title, more);
  }

  /**
   * An empty file of this form: the header line with all known columns.
   *
   * @return one line, comma-separated, with its line end
   */
  public String template() {
    return CsvText.row(columns.stream().map(Column::name).toList(), Separator.COMMA);
  }
}
