package fettle.block;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.quantity.HardnessScale;
import fettle.refusal.InputRefusedException;
import fettle.table.Cell;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BlocksCsvTest {
  private static final String FULL_ROW =
      "B-17,HV10,241.5,3.2,2,0.6,K-100,Lab One,2025-02-01,2030-02-01,M1,1.1,low-alloy steel,check,"
          + "16,0.9,0.3,H7,bar,210,2,0.29,5\n";

  private static List<ReferenceBlock> read(String text) {
    return BlocksCsv.read(text.getBytes(StandardCharsets.UTF_8), "blocks.csv");
  }

  @Test
  void readsEveryColumnOfTheTemplate() {
    ReferenceBlock block = read(BlocksCsv.template() + FULL_ROW).get(0);
    Certificate certificate =
        new Certificate(
            HardnessScale.parse("HV10", ""),
            241.5,
            3.2,
            2,
            OptionalDouble.of(0.6),
            Optional.of("K-100"),
            Optional.of("Lab One"),
            Optional.of(LocalDate.of(2025, 2, 1)),
            Optional.of(LocalDate.of(2030, 2, 1)),
            Optional.of("M1"),
            OptionalDouble.of(1.1),
            OptionalInt.of(5));
    assertEquals(
        new ReferenceBlock(
            "B-17",
            Optional.of("low-alloy steel"),
            BlockRole.CHECK,
            OptionalDouble.of(16),
            OptionalDouble.of(0.9),
            OptionalDouble.of(0.3),
            Optional.of("H7"),
            Optional.of("bar"),
            OptionalDouble.of(210),
            OptionalDouble.of(2),
            OptionalDouble.of(0.29),
            List.of(certificate),
            Optional.empty()),
        block);
  }

  @Test
  void templateNamesTheDocumentedColumns() {
    assertEquals(
        "block,scale,certified,expanded_uncertainty,coverage_factor,non_uniformity,certificate,"
            + "certified_by,certified_on,valid_until,reference_machine,u_shared,material,role,"
            + "thickness_mm,mass_kg,roughness_ra_um,heat,product_form,elastic_modulus_gpa,"
            + "u_elastic_modulus_gpa,poisson_ratio,indentations\n",
        BlocksCsv.template());
  }

  @Test
  void joinsTheRowsOfABlockOldestCertificateFirst() {
    List<ReferenceBlock> blocks =
        read(
            """
            block;scale;certified;expanded_uncertainty;coverage_factor;certificate;certified_on;heat;mass_kg
            B1;HV10;241,5;3,2;2;K-2;2025-02-01;H7;
            B2;HRC;22,1;0,5;2;;;;
            B1;HRC;21,9;0,5;2;R-1;;;0,9
            B1;HV10;242;4;2;K-1;2020-02-01;H7;0,9
            """);
    assertThat(blocks).extracting(ReferenceBlock::id).containsExactly("B1", "B2");
    ReferenceBlock block = blocks.get(0);
    assertThat(block.certificates())
        .extracting(c -> c.number().orElse(""))
        .containsExactly("R-1", "K-1", "K-2");
    assertEquals(
        "K-2", block.certificateFor(HardnessScale.parse("HV10", "")).orElseThrow().number().get());
    assertEquals(OptionalDouble.of(0.9), block.massKg());
    assertEquals(Optional.of("H7"), block.heat());
    assertEquals(BlockRole.FIT, block.defaultRole());
  }

  @Test
  void allowsAllOfTheUncertaintyToBeShared() {
    // 0.9 / 2.9 is a periodic fraction; a shared part written with 17 digits may lie a bit above.
    ReferenceBlock block =
        read("block,scale,certified,expanded_uncertainty,coverage_factor,reference_machine,"
                + "u_shared\nB1,HRC,22,0.9,2.9,M1,0.31034482758620696\n")
            .get(0);
    Certificate certificate = block.certificates().get(0);
    assertTrue(certificate.sharedUncertainty().getAsDouble() <= certificate.standardUncertainty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"con", "NUL", "com1", "LPT9.x", "aux.json", "..", "a/b", "a\\b", "-x", "_x", "ü"})
  void refusesMarksThatAreNoFileNames(String id) {
    assertThrows(InputRefusedException.class, () -> BlockRules.id(id, "here"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"B-17", "7", "com10", "console", "a.b_c-D", "com", "x.con"})
  void acceptsOrdinaryMarks(String id) {
    assertEquals(id, BlockRules.id(id, "here"));
  }

  @Test
  void makesABlockFromOptionsByTheSameRules() {
    String[] names = BlocksCsv.template().strip().split(",");
    String[] texts = FULL_ROW.strip().split(",");
    Map<String, Cell> options = new LinkedHashMap<>();
    for (int i = 0; i < names.length; i++) {
      options.put(names[i], Cell.ofOption("--" + names[i].replace('_', '-'), texts[i]));
    }
    assertEquals(
        read(BlocksCsv.template() + FULL_ROW).get(0), BlocksCsv.fromOptions(options, "block add"));

    options.put("certified", Cell.ofOption("--certified", "-5"));
    assertEquals(
        """
        "-5" is not above 0.
          where     option --certified
          expected  a number above 0
          do        correct the number or its sign""",
        refusal(options));
    options.remove("certified");
    assertEquals(
        """
        certified is missing.
          where     block add
          expected  at least block, scale, certified, expanded_uncertainty and coverage_factor
          do        state it""",
        refusal(options));
    assertThrows(
        IllegalArgumentException.class,
        () -> BlocksCsv.fromOptions(Map.of("colour", Cell.ofOption("--colour", "red")), "x"));
  }

  private static String refusal(Map<String, Cell> options) {
    return assertThrows(
            InputRefusedException.class, () -> BlocksCsv.fromOptions(options, "block add"))
        .getMessage();
  }

  @Test
  void checksABlockThatCameFromElsewhere() {
    ReferenceBlock block = read(BlocksCsv.template() + FULL_ROW).get(0);
    assertEquals(block, BlockRules.check(block, "reference-blocks/B-17.json"));
    ReferenceBlock soft =
        new ReferenceBlock(
            block.id(),
            block.material(),
            block.defaultRole(),
            OptionalDouble.of(Double.NaN),
            block.massKg(),
            block.roughnessRaUm(),
            block.heat(),
            block.productForm(),
            block.elasticModulusGpa(),
            block.elasticModulusUncertaintyGpa(),
            block.poissonRatio(),
            block.certificates(),
            block.withdrawn());
    assertEquals(
        "thickness_mm NaN is out of range.",
        assertThrows(InputRefusedException.class, () -> BlockRules.check(soft, "x")).what());
  }
}
