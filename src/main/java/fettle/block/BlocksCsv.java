package fettle.block;

import fettle.refusal.InputRefusedException;
import fettle.table.Cell;
import fettle.table.Row;
import fettle.table.RowProblems;
import fettle.table.Table;
import fettle.table.TableForm;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The blocks CSV form: one row for each block and certificate.
 *
 * <p>A block's first row gives its facts; a further row with another scale or certificate number
 * gives a further certificate. Facts stated in several rows must agree.
 */
public final class BlocksCsv {
  /** The columns. */
  public static final TableForm FORM =
      TableForm.of("blocks")
          .requiring("block", "scale")
          .requiringNumbers("certified", "expanded_uncertainty", "coverage_factor")
          .allowingNumbers("non_uniformity")
          .allowing(
              "certificate", "certified_by", "certified_on", "valid_until", "reference_machine")
          .allowingNumbers("u_shared")
          .allowing("material", "role")
          .allowingNumbers("thickness_mm", "mass_kg", "roughness_ra_um")
          .allowing("heat", "product_form")
          .allowingNumbers(
              "elastic_modulus_gpa", "u_elastic_modulus_gpa", "poisson_ratio", "indentations");

  private BlocksCsv() {}

  /**
   * An empty blocks file to fill in.
   *
   * @return the header line with all columns
   */
  public static String template() {
    return FORM.template();
  }

  /**
   * Reads blocks.
   *
   * @param bytes the file's bytes
   * @param file file name for messages
   * @return at least one block, in the order of their first rows
   * @throws InputRefusedException if anything in the file cannot be; then nothing of it is taken
   */
  public static List<ReferenceBlock> read(byte[] bytes, String file) {
    Table table = Table.read(bytes, file, FORM);
    Map<String, BlockRows> byMark = new LinkedHashMap<>();
    RowProblems problems = new RowProblems();
    for (Row row : table.rows()) {
      try {
        take(row, byMark);
      } catch (InputRefusedException problem) {
        problems.add(row.line(), problem);
        if (problems.isFull()) {
          break;
        }
      }
    }
    problems.refuseIfAny();
    List<ReferenceBlock> blocks = new ArrayList<>();
    for (BlockRows rows : byMark.values()) {
      try {
        blocks.add(rows.toBlock());
      } catch (InputRefusedException problem) {
        problems.add(rows.firstLine(), problem);
      }
    }
    problems.refuseIfAny();
    return List.copyOf(blocks);
  }

  private static void take(Row row, Map<String, BlockRows> byMark) {
    BlockCells cells = BlockCells.of(row);
    Cell mark = row.cell("block");
    String id = BlockRules.id(mark.text(), mark.where());
    Certificate certificate = CertificateCells.read(cells);
    BlockFacts facts = BlockFacts.read(cells);
    BlockRows rows =
        byMark.computeIfAbsent(
            id.toLowerCase(Locale.ROOT), key -> new BlockRows(id, row.line(), row.where(), facts));
    if (!rows.id().equals(id)) {
      throw mark.refusal(
          "The block's mark "
              + mark.quoted()
              + " differs only in case from \""
              + rows.id()
              + "\" on line "
              + rows.firstLine()
              + ".",
          "the same mark for the same block, and clearly different ones for others",
          "correct one of them");
    }
    rows.add(facts, certificate, row.line(), row.where());
  }

  /**
   * One block with one certificate from options, by the rules of a row.
   *
   * @param options texts by column name of the form, each made by {@link Cell#ofOption}
   * @param where place for messages about several options together
   * @return the block
   * @throws InputRefusedException if a needed one is missing or anything cannot be
   */
  public static ReferenceBlock fromOptions(Map<String, Cell> options, String where) {
    for (String column : options.keySet()) {
      if (FORM.columns().stream().noneMatch(known -> known.name().equals(column))) {
        throw new IllegalArgumentException("options: " + column + " is no column of blocks");
      }
    }
    BlockCells cells = BlockCells.of(options, where);
    Cell mark = cells.needed("block");
    String id = BlockRules.id(mark.text(), mark.where());
    Certificate certificate = CertificateCells.read(cells);
    return BlockFacts.read(cells).toBlock(id, List.of(certificate), where);
  }
}
