package fettle.block;

import fettle.refusal.InputRefusedException;
import fettle.table.Cell;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is stated about a block itself, apart from certificates; unstated things are absent.
 *
 * @param words material, heat, product form and role by column
 * @param quantities measured properties
 */
record BlockFacts(Map<String, String> words, Map<PhysicalQuantity, Double> quantities) {
  private static final String ROLE = "role";
  private static final List<String> TEXTS = List.of("material", "heat", "product_form");

  BlockFacts {
    words = Map.copyOf(words);
    quantities = Map.copyOf(quantities);
  }

  static BlockFacts read(BlockCells cells) {
    Map<String, String> words = new LinkedHashMap<>();
    for (String column : TEXTS) {
      cells.filled(column).ifPresent(cell -> words.put(column, cell.text()));
    }
    cells
        .filled(ROLE)
        .ifPresent(cell -> words.put(ROLE, BlockRole.parse(cell.text(), cell.where()).id()));
    Map<PhysicalQuantity, Double> quantities = new EnumMap<>(PhysicalQuantity.class);
    for (PhysicalQuantity quantity : PhysicalQuantity.values()) {
      Optional<Cell> cell = cells.filled(quantity.column());
      cell.ifPresent(filled -> quantities.put(quantity, quantity.read(filled)));
    }
    return new BlockFacts(words, quantities);
  }

  /** These facts and those of a later row; a fact stated twice must be stated alike. */
  BlockFacts and(BlockFacts later, String block, int firstLine, String where) {
    Map<String, String> allWords = new LinkedHashMap<>(words);
    for (String column : List.of("material", "heat", "product_form", ROLE)) {
      String now = later.words.get(column);
      String before = now == null ? null : allWords.put(column, now);
      if (before != null && !before.equals(now)) {
        throw contradiction(column, now, before, block, firstLine, where);
      }
    }
    Map<PhysicalQuantity, Double> all = new EnumMap<>(PhysicalQuantity.class);
    all.putAll(quantities);
    for (PhysicalQuantity quantity : PhysicalQuantity.values()) {
      Double now = later.quantities.get(quantity);
      Double before = now == null ? null : all.put(quantity, now);
      if (before != null && !before.equals(now)) {
        throw contradiction(
            quantity.column(),
            PhysicalQuantity.plain(now),
            PhysicalQuantity.plain(before),
            block,
            firstLine,
            where);
      }
    }
    return new BlockFacts(allWords, all);
  }

  private static InputRefusedException contradiction(
      String column, String now, String before, String block, int firstLine, String where) {
    return new InputRefusedException(
        "Block "
            + block
            + " has "
            + column
            + " "
            + now
            + " here, but "
            + before
            + " in the rows from line "
            + firstLine
            + ".",
        where,
        "the same " + column + " in all rows of a block, or an empty cell",
        "correct one of them, or give the second block its own mark");
  }

  ReferenceBlock toBlock(String id, List<Certificate> certificates, String where) {
    return BlockRules.check(
        new ReferenceBlock(
            id,
            Optional.ofNullable(words.get("material")),
            words.containsKey(ROLE) ? BlockRole.parse(words.get(ROLE), where) : BlockRole.FIT,
            quantity(PhysicalQuantity.THICKNESS),
            quantity(PhysicalQuantity.MASS),
            quantity(PhysicalQuantity.ROUGHNESS),
            Optional.ofNullable(words.get("heat")),
            Optional.ofNullable(words.get("product_form")),
            quantity(PhysicalQuantity.MODULUS),
            quantity(PhysicalQuantity.MODULUS_UNCERTAINTY),
            quantity(PhysicalQuantity.POISSON_RATIO),
            certificates,
            Optional.empty()),
        where);
  }

  private OptionalDouble quantity(PhysicalQuantity quantity) {
    Double value = quantities.get(quantity);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
