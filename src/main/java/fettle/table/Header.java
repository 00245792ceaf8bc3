package fettle.table;

import fettle.refusal.InputRefusedException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** The header line of a table: names as written, found without regard to case and blanks. */
public final class Header {
  private final String file;
  private final int line;
  private final List<String> names;
  private final Map<String, Integer> positions = new LinkedHashMap<>();

  private Header(String file, int line, List<String> names) {
    this.file = file;
    this.line = line;
    this.names = List.copyOf(names);
  }

  static Header of(String file, int line, List<String> texts, TableForm form) {
    Header header = new Header(file, line, texts.stream().map(Shown::trimmed).toList());
    header.indexNames();
    header.requireColumns(form);
    header.refuseMisspelled(form);
    return header;
  }

  static String key(String name) {
    return Shown.trimmed(name).toLowerCase(Locale.ROOT);
  }

  private void indexNames() {
    for (int i = 0; i < names.size(); i++) {
      if (names.get(i).isEmpty()) {
        continue;
      }
      Integer before = positions.put(key(names.get(i)), i);
      if (before != null) {
        throw refusal(
            "Columns "
                + (before + 1)
                + " and "
                + (i + 1)
                + " are both named "
                + Shown.quoted(names.get(i))
                + ".",
            "each column name once; case does not matter",
            "rename one of the two, or take it out");
      }
    }
  }

  private void requireColumns(TableForm form) {
    List<String> missing = new ArrayList<>();
    for (TableForm.Column column : form.columns()) {
      if (column.required() && !positions.containsKey(column.name())) {
        missing.add(column.name());
      }
    }
    if (missing.isEmpty()) {
      return;
    }
    boolean one = missing.size() == 1;
    throw refusal(
        (one ? "The column " : "The columns ")
            + Shown.names(missing)
            + (one ? " is" : " are")
            + " missing; the file has "
            + (names.size() == 1 ? "only " : "")
            + Shown.names(names)
            + ".",
        "a header line with the names "
            + Shown.names(
                form.columns().stream()
                    .filter(TableForm.Column::required)
                    .map(TableForm.Column::name)
                    .toList()),
        advice(missing, form));
  }

  private String advice(List<String> missing, TableForm form) {
    if (names.stream().allMatch(Header::isNumber)) {
      return "put a header line above the numbers";
    }
    List<String> unknown =
        names.stream()
            .filter(name -> !name.isEmpty())
            .filter(name -> form.columns().stream().noneMatch(c -> c.name().equals(key(name))))
            .toList();
    List<String> renames = new ArrayList<>();
    for (String name : missing) {
      NearMatch.of(name, unknown)
          .ifPresent(near -> renames.add("rename " + Shown.quoted(near) + " to " + name));
    }
    return renames.isEmpty() ? "add what is missing" : String.join(", ", renames);
  }

  private static boolean isNumber(String name) {
    return !Double.isNaN(DecimalParser.parse(name, DecimalMark.UNDECIDED));
  }

  /**
   * A misspelled optional column would be kept as an unknown one and its numbers silently not used.
   */
  private void refuseMisspelled(TableForm form) {
    for (TableForm.Column known : form.columns()) {
      if (positions.containsKey(known.name())) {
        continue;
      }
      for (String name : names) {
        if (!name.isEmpty()
            && form.columns().stream().noneMatch(c -> c.name().equals(key(name)))
            && NearMatch.isMisspelling(name, known.name())) {
          throw refusal(
              "The column "
                  + Shown.quoted(name)
                  + " is not known, but looks like "
                  + known.name()
                  + ".",
              "the exact name " + known.name() + ", or a name that cannot be mistaken for it",
              "rename the column");
        }
      }
    }
  }

  private InputRefusedException refusal(String what, String expected, String action) {
    return new InputRefusedException(what, file + ", line " + line, expected, action);
  }

  /**
   * Names as written, blanks around them removed.
   *
   * @return in the order of the file; empty for a column without a name
   */
  public List<String> names() {
    return names;
  }

  /**
   * Line of the header.
   *
   * @return counted from 1
   */
  public int line() {
    return line;
  }

  /**
   * Position of a column.
   *
   * @param name its name, any case
   * @return counted from 0; empty if there is no such column
   */
  public OptionalInt index(String name) {
    Integer position = positions.get(key(name));
    return position == null ? OptionalInt.empty() : OptionalInt.of(position);
  }

  String file() {
    return file;
  }

  int width() {
    return names.size();
  }

  Optional<String> name(int index) {
    return names.get(index).isEmpty() ? Optional.empty() : Optional.of(names.get(index));
  }
}
