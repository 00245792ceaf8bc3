package fettle.block;

import fettle.quantity.HardnessScale;
import fettle.table.Cell;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Reads one certificate from its cells. */
final class CertificateCells {
  private static final int MOST_INDENTATIONS = 100_000;

  private CertificateCells() {}

  static Certificate read(BlockCells cells) {
    Cell scale = cells.needed("scale");
    double certified = cells.needed("certified").positive();
    double expandedUncertainty = cells.needed("expanded_uncertainty").positive();
    double coverageFactor = cells.needed("coverage_factor").positive();
    Certificate stated =
        new Certificate(
            HardnessScale.parse(scale.text(), scale.where()),
            certified,
            expandedUncertainty,
            coverageFactor,
            notNegative(cells.filled("non_uniformity")),
            cells.filled("certificate").map(Cell::text),
            cells.filled("certified_by").map(Cell::text),
            cells.filled("certified_on").map(Cell::date),
            cells.filled("valid_until").map(Cell::date),
            cells.filled("reference_machine").map(Cell::text),
            notNegative(cells.filled("u_shared")),
            indentations(cells.filled("indentations")));
    return atMostWhole(BlockRules.check(stated, cells.where()));
  }

  /** Takes off the last bit by which a shared part may exceed U / k after division. */
  private static Certificate atMostWhole(Certificate stated) {
    double whole = stated.standardUncertainty();
    if (stated.sharedUncertainty().orElse(0) <= whole) {
      return stated;
    }
    return new Certificate(
        stated.scale(),
        stated.certified(),
        stated.expandedUncertainty(),
        stated.coverageFactor(),
        stated.nonUniformity(),
        stated.number(),
        stated.certifiedBy(),
        stated.certifiedOn(),
        stated.validUntil(),
        stated.referenceMachine(),
        OptionalDouble.of(whole),
        stated.indentations());
  }

  private static OptionalDouble notNegative(Optional<Cell> cell) {
    return cell.isPresent() ? OptionalDouble.of(cell.get().notNegative()) : OptionalDouble.empty();
  }

  private static OptionalInt indentations(Optional<Cell> cell) {
    return cell.isPresent()
        ? OptionalInt.of(cell.get().integer(1, MOST_INDENTATIONS))
        : OptionalInt.empty();
  }
}
