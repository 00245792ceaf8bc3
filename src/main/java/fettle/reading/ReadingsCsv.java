package fettle.reading;

import fettle.block.BlockRules;
import fettle.refusal.InputRefusedException;
import fettle.table.Cell;
import fettle.table.Row;
import fettle.table.Table;
import fettle.table.TableForm;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.OptionalDouble;

/** The readings CSV form: one row for each reading. */
public final class ReadingsCsv {
  private static final double COLDEST = -100;
  private static final double HOTTEST = 300;

  /** The columns. */
  public static final TableForm FORM =
      TableForm.of("readings")
          .requiring("block")
          .requiringNumbers("response")
          .allowing("taken_at", "run", "operator", "probe")
          .allowingNumbers("temperature_c", "free_frequency_hz", "x_mm", "y_mm")
          .allowing("direction", "note");

  private ReadingsCsv() {}

  /**
   * An empty readings file to fill in, for a dossier or for a reverification.
   *
   * @return the header line with all columns
   */
  public static String template() {
    return FORM.template();
  }

  /**
   * Reads readings.
   *
   * @param bytes the file's bytes
   * @param file file name, kept with each reading
   * @return the readings with the hash of the bytes
   * @throws InputRefusedException if anything in the file cannot be; then nothing of it is taken
   */
  public static ReadingsFile read(byte[] bytes, String file) {
    Table table = Table.read(bytes, file, FORM);
    return new ReadingsFile(file, sha256(bytes), table.map(row -> reading(row, file)));
  }

  private static Reading reading(Row row, String file) {
    Cell block = row.cell("block");
    return new Reading(
        file,
        row.line(),
        BlockRules.id(block.text(), block.where()),
        row.cell("response").positive(),
        row.filled("taken_at").map(Cell::dateTime),
        row.optionalText("run"),
        row.optionalText("operator"),
        row.optionalText("probe"),
        temperature(row.filled("temperature_c")),
        positive(row.filled("free_frequency_hz")),
        row.optionalDecimal("x_mm"),
        row.optionalDecimal("y_mm"),
        row.optionalText("direction"),
        row.filled("note").map(Cell::prose));
  }

  private static OptionalDouble temperature(Optional<Cell> cell) {
    return cell.isPresent()
        ? OptionalDouble.of(cell.get().between(COLDEST, HOTTEST, "°C"))
        : OptionalDouble.empty();
  }

  private static OptionalDouble positive(Optional<Cell> cell) {
    return cell.isPresent() ? OptionalDouble.of(cell.get().positive()) : OptionalDouble.empty();
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException impossible) {
      // Every Java platform has SHA-256 (java.security.MessageDigest, class comment).
      throw new IllegalStateException(impossible);
    }
  }
}
