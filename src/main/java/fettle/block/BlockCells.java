package fettle.block;

import fettle.refusal.InputRefusedException;
import fettle.table.Cell;
import fettle.table.Row;
import java.util.Map;
import java.util.Optional;

/** Where the statements about one block and one certificate come from: a row, or options. */
interface BlockCells {
  /** The cell of a column that is needed; refuses where there is none. */
  Cell needed(String column);

  /** The cell of a column, where it is filled in. */
  Optional<Cell> filled(String column);

  /** Place of the whole for messages. */
  String where();

  static BlockCells of(Row row) {
    return new BlockCells() {
      @Override
      public Cell needed(String column) {
        return row.cell(column);
      }

      @Override
      public Optional<Cell> filled(String column) {
        return row.filled(column);
      }

      @Override
      public String where() {
        return row.where();
      }
    };
  }

  static BlockCells of(Map<String, Cell> options, String where) {
    return new BlockCells() {
      @Override
      public Cell needed(String column) {
        return filled(column)
            .orElseThrow(
                () ->
                    new InputRefusedException(
                        column + " is missing.",
                        where,
                        "at least block, scale, certified, expanded_uncertainty and"
                            + " coverage_factor",
                        "state it"));
      }

      @Override
      public Optional<Cell> filled(String column) {
        return Optional.ofNullable(options.get(column)).filter(cell -> !cell.isBlank());
      }

      @Override
      public String where() {
        return where;
      }
    };
  }
}
