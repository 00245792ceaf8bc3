package fettle.reading;

import fettle.refusal.InputRefusedException;
import fettle.table.Cell;
import fettle.table.DecimalText;
import fettle.table.Row;
import fettle.table.Table;
import fettle.table.TableForm;
import java.util.List;
import java.util.Optional;

/** The pairs CSV form: one row for each point, numbers kept with all their digits. */
public final class PairsCsv {
  private static final String U_RESPONSE = "u_response";
  private static final String U_HARDNESS = "u_hardness";
  private static final String U_SHARED = "u_shared";

  /** The columns. */
  public static final TableForm FORM =
      TableForm.of("pairs")
          .requiringNumbers("response", "hardness")
          .allowingNumbers(U_RESPONSE, U_HARDNESS)
          .allowing("group")
          .allowingNumbers(U_SHARED);

  private PairsCsv() {}

  /**
   * Reads pairs.
   *
   * @param bytes the file's bytes
   * @param file file name for messages
   * @return at least two points
   * @throws InputRefusedException if anything in the file cannot be; then nothing of it is taken
   */
  public static Pairs read(byte[] bytes, String file) {
    Table table = Table.read(bytes, file, FORM);
    boolean weighted = isUsed(table, U_HARDNESS);
    boolean uncertainResponse = isUsed(table, U_RESPONSE);
    if (uncertainResponse && !weighted) {
      throw new InputRefusedException(
          "u_response is given without u_hardness.",
          file,
          "u_hardness for each point, with or without u_response",
          "add the column u_hardness, or take u_response out for an ordinary fit");
    }
    List<Pair> points = table.map(row -> point(row, weighted, uncertainResponse));
    if (points.size() < 2) {
      throw new InputRefusedException(
          "The file has one point only.",
          file,
          "at least two points, and more than the model has parameters",
          "add points");
    }
    return new Pairs(file, points);
  }

  /** Whether any cell of a column is filled; a row that does not fit is told of later. */
  private static boolean isUsed(Table table, String column) {
    if (table.header().index(column).isEmpty()) {
      return false;
    }
    for (Row row : table.rows()) {
      if (row.isSound() && row.filled(column).isPresent()) {
        return true;
      }
    }
    return false;
  }

  private static Pair point(Row row, boolean weighted, boolean uncertainResponse) {
    DecimalText response = row.cell("response").exactDecimal();
    DecimalText hardness = row.cell("hardness").exactDecimal();
    Optional<DecimalText> responseUncertainty =
        uncertainResponse ? Optional.of(responseUncertainty(row)) : Optional.empty();
    Optional<DecimalText> hardnessUncertainty =
        weighted ? Optional.of(hardnessUncertainty(row)) : Optional.empty();
    return new Pair(
        row.line(),
        response,
        hardness,
        responseUncertainty,
        hardnessUncertainty,
        row.optionalText("group"),
        sharedUncertainty(row, hardnessUncertainty));
  }

  private static DecimalText responseUncertainty(Row row) {
    Cell cell = row.cell(U_RESPONSE);
    if (cell.isBlank()) {
      throw cell.refusal(
          "u_response is stated for other points, but not here.",
          "a standard uncertainty for each point; 0 is allowed",
          "fill in the cell");
    }
    cell.notNegative();
    return cell.exactDecimal();
  }

  private static DecimalText hardnessUncertainty(Row row) {
    Cell cell = row.cell(U_HARDNESS);
    if (cell.isBlank()) {
      throw cell.refusal(
          "u_hardness is stated for other points, but not here.",
          "a standard uncertainty above 0 for each point, or for none",
          "fill in the cell, or take the column out for an ordinary fit");
    }
    cell.notNegative();
    DecimalText uncertainty = cell.exactDecimal();
    if (uncertainty.value() == 0) {
      throw cell.refusal(
          "A u_hardness of 0 would give this point infinite weight.",
          "a standard uncertainty above 0 for each point, or for none",
          "state the uncertainty, or take the column out for an ordinary fit");
    }
    return uncertainty;
  }

  private static Optional<DecimalText> sharedUncertainty(
      Row row, Optional<DecimalText> hardnessUncertainty) {
    Optional<Cell> filled = row.filled(U_SHARED);
    if (filled.isEmpty()) {
      return Optional.empty();
    }
    Cell cell = filled.get();
    cell.notNegative();
    DecimalText shared = cell.exactDecimal();
    if (hardnessUncertainty.isEmpty()) {
      throw cell.refusal(
          "u_shared is given without u_hardness, of which it is a part.",
          "u_hardness for each point",
          "add the column u_hardness, or take u_shared out");
    }
    if (row.filled("group").isEmpty()) {
      throw cell.refusal(
          "u_shared is given without a group.",
          "the group of points that share this uncertainty",
          "fill in group, or empty u_shared");
    }
    if (shared.exact().compareTo(hardnessUncertainty.get().exact()) > 0) {
      throw cell.refusal(
          "u_shared "
              + shared.written()
              + " is larger than u_hardness "
              + hardnessUncertainty.get().written()
              + ".",
          "u_shared of at most u_hardness, as it is a part of it",
          "check whether the two columns are exchanged");
    }
    return Optional.of(shared);
  }
}
