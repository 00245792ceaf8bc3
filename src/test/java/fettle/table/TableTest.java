package fettle.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TableTest {
  private static final TableForm FORM =
      TableForm.of("things").requiring("id").requiringNumbers("value").allowing("note");

  private static Table table(String text) {
    return Table.read(text.getBytes(StandardCharsets.UTF_8), "t.csv", FORM);
  }

  private static double value(Row row) {
    return row.cell("value").decimal();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "id,value\na,1.5\nb,2.5\n",
        "id,value\na,1.5\nb,2.5",
        "\ufeffid,value\na,1.5\nb,2.5\n",
        "id,value\r\na,1.5\r\nb,2.5\r\n",
        "id,value\ra,1.5\rb,2.5\r",
        "id;value\na;1.5\nb;2.5\n",
        "id;value\na;1,5\nb;2,5\n",
        "id\tvalue\na\t1,5\nb\t2,5\n",
        "VALUE , Id\n1.5,a\n2.5,b\n",
        "\n\nid,value\n\na,1.5\n  \nb,2.5\n,\n\n",
        "\"id\",\"value\"\n\"a\",\"1.5\"\n\"b\",\"2.5\"\n",
        "id,value,\na,1.5,\nb,2.5,\n",
        "\ufeff\"id\";\"value\"\r\n\"a\"; +1,5 \r\n\"b\";25e-1\r\n",
        "id;value\na;\u00a01,50\nb;2,50\u00a0\n",
      })
  void readsTheSameTableInAnyForm(String text) {
    Table table = table(text);
    assertThat(table.map(TableTest::value)).containsExactly(1.5, 2.5);
    assertThat(table.map(row -> row.cell("ID").text())).containsExactly("a", "b");
  }

  @Test
  void tellsSeparatorAndDecimalMark() {
    assertEquals(DecimalMark.POINT, table("id,value\na,1\n").decimalMark());
    assertEquals(DecimalMark.UNDECIDED, table("id;value\na;1\n").decimalMark());
    assertEquals(DecimalMark.COMMA, table("id;value\na;1\nb;2,5\n").decimalMark());
    assertEquals(DecimalMark.POINT, table("id\tvalue\na\t1.5\n").decimalMark());
    assertEquals(Separator.TAB, table("id\tvalue\na\t1.5\n").separator());
    assertEquals(Separator.SEMICOLON, table("id;value\na;1.5\n").separator());
  }

  @Test
  void textInANumericColumnDoesNotSettleTheMark() {
    Table table = table("id;value\na;n.a.\nb;2,5\n");
    assertEquals(DecimalMark.COMMA, table.decimalMark());
    assertEquals(2.5, value(table.rows().get(1)));
  }

  @Test
  void keepsUnknownColumnsAndAddresses() {
    Table table = table("colour,value,id\n red ,2,a\n\"gr,\"\"een\",3,b\n");
    assertThat(table.header().names()).containsExactly("colour", "value", "id");
    assertThat(table.rows().get(0).texts()).containsExactly(" red ", "2", "a");
    assertThat(table.rows().get(1).texts()).containsExactly("gr,\"een", "3", "b");
    assertEquals("t.csv, line 3, column 2 (value)", table.rows().get(1).cell("value").where());
    assertTrue(table.rows().get(1).filled("note").isEmpty());
    assertThrows(IllegalArgumentException.class, () -> table.rows().get(1).cell("note"));
  }

  @Test
  void countsPhysicalLinesThroughQuotedLineEnds() {
    Table table = table("id,value,note\na,1,\"one\ntwo\r\nthree\rfour\"\n\nb,2,\n");
    assertThat(table.rows().stream().map(Row::line).toList()).containsExactly(2, 7);
    assertEquals("one\ntwo\r\nthree\rfour", table.rows().get(0).cell("note").prose());
  }

  @Test
  void keepsAllDigits() {
    Table table = table("id;value\na;0,1234567890123456789012345\nb;0e999999999\nc;-1,50E+3\n");
    List<DecimalText> values = table.map(row -> row.cell("value").exactDecimal());
    assertEquals("0.1234567890123456789012345", values.get(0).exact().toPlainString());
    assertEquals("0,1234567890123456789012345", values.get(0).written());
    assertEquals(0.12345678901234568, values.get(0).value());
    assertEquals(0, values.get(1).exact().precision() - 1);
    assertEquals("0", values.get(1).exact().toPlainString());
    assertEquals(-1500.0, values.get(2).exact().doubleValue());
  }

  @Test
  void refusesWhatPassesTheLimits() {
    String long1 = "x".repeat((1 << 20) + 1);
    assertRefused(
        "id,value\na,1\n" + long1 + ",2\n",
        "The cell that starts on line 3 is longer than 1 MiB.",
        "t.csv, line 3");
    assertThat(table("id,value\n" + long1.substring(1) + ",2\n").rows()).hasSize(1);
    String long2 = ("," + "x".repeat(1_000_000)).repeat(5);
    assertRefused(
        "id,value\na,1\nb" + long2 + "\n",
        "The row that starts on line 3 is too large.",
        "t.csv, line 3");
    assertRefused(
        "id,value\n" + ",".repeat(1_000) + "\n",
        "The row that starts on line 2 is too large.",
        "t.csv, line 2");
    assertRefused(
        "id,value\n" + "a,1\n".repeat(1_000_001),
        "The file has more than 1,000,000 rows.",
        "t.csv, line 1000002");
    InputRefusedException large =
        assertThrows(
            InputRefusedException.class,
            () -> Table.read(new byte[InputFile.LARGEST + 1], "t.csv", FORM));
    assertEquals("The file is larger than 64 MiB.", large.what());
  }

  private static void assertRefused(String text, String what, String where) {
    InputRefusedException refusal = assertThrows(InputRefusedException.class, () -> table(text));
    assertEquals(what, refusal.what());
    assertEquals(where, refusal.where());
  }

  @Test
  void readsAFileOrSaysWhyNot(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("t.csv");
    Files.writeString(file, "id,value\na,1\n");
    assertThat(InputFile.bytes(file)).hasSize(13);
    assertEquals(
        "This is a folder.",
        assertThrows(InputRefusedException.class, () -> InputFile.bytes(folder)).what());
    assertEquals(
        "There is no such file.",
        assertThrows(
                InputRefusedException.class, () -> InputFile.bytes(folder.resolve("missing.csv")))
            .what());
  }

  @Test
  void templatesAreEmptyFilesOfTheForm() {
    assertEquals("id,value,note\n", FORM.template());
  }
}
