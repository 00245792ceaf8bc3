package fettle.cli;

import fettle.curve.Curve;
import fettle.curve.CurveEvaluator;
import fettle.curve.Status;
import fettle.curve.UncertaintyTable;
import fettle.table.CsvText;
import fettle.table.DecimalMark;
import fettle.table.Row;
import fettle.table.RowReader;
import fettle.table.TableForm;
import java.io.IOException;
import java.io.InputStream;
import java.io.Writer;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Converts responses row by row in constant memory. */
final class ApplyStream {
  private static final TableForm FORM =
      TableForm.of("responses")
          .requiringNumbers("response")
          .allowingNumbers("n", "sd")
          .allowing("id");
  private static final List<String> ADDED = List.of("hardness", "expanded_uncertainty", "status");

  private static final int MOST_READINGS = 1_000_000;

  /** Different numbers of readings for which a table is worth its making. */
  private static final int MOST_TABLES = 64;

  private final Curve curve;
  private final CurveEvaluator evaluator;
  private final FixedDecimals decimals;
  private final Map<Integer, UncertaintyTable> tables = new HashMap<>();
  private final Map<Status, Long> counts = new EnumMap<>(Status.class);

  ApplyStream(Curve curve, int digits) {
    this.curve = curve;
    this.evaluator = curve.evaluator();
    this.decimals = new FixedDecimals(digits);
  }

  /** Rows by status. */
  Map<Status, Long> counts() {
    return counts;
  }

  void run(InputStream in, String file, Writer out) throws IOException {
    try (RowReader reader = RowReader.open(in, file, FORM)) {
      List<String> header = new ArrayList<>(reader.header().names());
      header.addAll(ADDED);
      out.write(CsvText.row(header, reader.separator()));
      for (Optional<Row> row = reader.next(); row.isPresent(); row = reader.next()) {
        List<String> cells = new ArrayList<>(row.get().texts());
        while (cells.size() < header.size() - ADDED.size()) {
          cells.add("");
        }
        // The mark is known from the first number with a fraction on.
        convert(row.get(), reader, cells, reader.decimalMark() == DecimalMark.COMMA);
        out.write(CsvText.row(cells, reader.separator()));
      }
    }
  }

  private void convert(Row row, RowReader reader, List<String> cells, boolean comma) {
    double response = number(row, reader, "response", Double.NaN);
    double n = number(row, reader, "n", 1);
    double sd = number(row, reader, "sd", 0);
    boolean usable = row.isSound() && n >= 1 && n == Math.rint(n) && n <= MOST_READINGS && sd >= 0;
    Status status = usable ? curve.range().statusOf(response) : Status.NOT_A_NUMBER;
    counts.merge(status, 1L, Long::sum);
    if (status == Status.IN_RANGE) {
      cells.add(decimals.text(evaluator.hardness(response), comma));
      cells.add(decimals.text(uncertainty(response, (int) n, sd), comma));
    } else {
      cells.add("");
      cells.add("");
    }
    cells.add(status.text());
  }

  private double uncertainty(double response, int n, double sd) {
    if (sd > curve.scatter().repeatabilityAt(response)) {
      return evaluator.resultAt(response, n, sd).expandedUncertainty();
    }
    UncertaintyTable table = tables.get(n);
    if (table == null) {
      if (tables.size() >= MOST_TABLES) {
        return evaluator.resultAt(response, n, Double.NaN).expandedUncertainty();
      }
      table = new UncertaintyTable(curve, n);
      tables.put(n, table);
    }
    return table.at(response);
  }

  /** A number, or the given value where the column or the cell is absent; NaN for anything else. */
  private static double number(Row row, RowReader reader, String column, double absent) {
    var index = reader.header().index(column);
    if (index.isEmpty() || !row.isSound() || row.texts().get(index.getAsInt()).isBlank()) {
      return absent;
    }
    return row.numberOrNaN(index.getAsInt());
  }
}
