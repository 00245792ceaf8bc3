package fettle.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class CsvTextTest {
  private static final TableForm FORM = TableForm.of("rows").requiring("c0");

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      delimiter = '|',
      value = {
        "plain|plain",
        "=1+1|'=1+1",
        "@SUM(A1)|'@SUM(A1)",
        "+cmd|'+cmd",
        "-2+3|'-2+3",
        "-12.5|-12.5",
        "+3,5|\"+3,5\"",
        "-1e-5|-1e-5",
        "＝1+1|'＝1+1",
        "a,b|\"a,b\"",
        "a;b|\"a;b\"",
        "3/4\" plate|\"3/4\"\" plate\"",
        "=HYPERLINK(\"x\")|\"'=HYPERLINK(\"\"x\"\")\"",
      })
  void escapesByRfc4180AndKeepsSpreadsheetsFromRunningText(String text, String escaped) {
    assertEquals(escaped, CsvText.escape(text));
  }

  @Test
  void escapesTabsLineEndsAndBlanksAtTheEnds() {
    assertEquals("\"'\tx\"", CsvText.escape("\tx"));
    assertEquals("\"'\r=1\"", CsvText.escape("\r=1"));
    assertEquals("\" x\"", CsvText.escape(" x"));
    assertEquals("\"a\nb\"", CsvText.escape("a\nb"));
    assertEquals("", CsvText.escape(""));
  }

  @ParameterizedTest
  @EnumSource(Separator.class)
  void readsBackWhatItWrote(Separator separator) {
    Random random = new Random(4180);
    for (int trial = 0; trial < 500; trial++) {
      List<List<String>> rows = randomRows(random);
      byte[] bytes = written(rows, separator);
      Table table = Table.read(bytes, "t.csv", FORM);
      assertThat(table.header().names()).isEqualTo(rows.get(0));
      assertThat(table.rows().stream().map(Row::texts).toList())
          .isEqualTo(rows.subList(1, rows.size()));
    }
  }

  // Jackson's CSV parser is the second opinion on what was written.
  @Test
  void writesWhatAnIndependentParserReads() throws IOException {
    Random random = new Random(2005);
    CsvMapper mapper = CsvMapper.builder().enable(CsvParser.Feature.WRAP_AS_ARRAY).build();
    for (int trial = 0; trial < 500; trial++) {
      List<List<String>> rows = randomRows(random);
      try (MappingIterator<String[]> read =
          mapper
              .readerFor(String[].class)
              .with(CsvSchema.emptySchema())
              .readValues(new String(written(rows, Separator.COMMA), StandardCharsets.UTF_8))) {
        List<List<String>> seen = new ArrayList<>();
        read.forEachRemaining(row -> seen.add(List.of(row)));
        assertThat(seen).isEqualTo(rows);
      }
    }
  }

  private static byte[] written(List<List<String>> rows, Separator separator) {
    StringBuilder text = new StringBuilder();
    rows.forEach(row -> text.append(CsvText.row(row, separator)));
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static List<List<String>> randomRows(Random random) {
    int columns = 2 + random.nextInt(4);
    List<List<String>> rows = new ArrayList<>();
    List<String> header = new ArrayList<>();
    for (int i = 0; i < columns; i++) {
      header.add("c" + i);
    }
    rows.add(header);
    int count = 1 + random.nextInt(5);
    for (int i = 0; i < count; i++) {
      List<String> row = new ArrayList<>();
      row.add("x" + randomText(random));
      for (int j = 1; j < columns; j++) {
        row.add(random.nextInt(4) == 0 ? "" : "y" + randomText(random));
      }
      rows.add(row);
    }
    return rows;
  }

  private static String randomText(Random random) {
    String[] pieces = {
      "a", "B", "7", ".", ",", ";", "\t", "\"", "\n", "\r\n", " ", "é", "µ", "硬", "😀", "'"
    };
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(6); i > 0; i--) {
      text.append(pieces[random.nextInt(pieces.length)]);
    }
    return text.toString();
  }
}
