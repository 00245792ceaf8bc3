package fettle.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fettle.block.BlocksCsv;
import fettle.refusal.InputRefusedException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Files that must be refused, each with the whole message. The cases stand in csv-refusals.txt: a
 * line {@code === kind: title}, the file, a line {@code ---}, the message. In the file, {@code \r},
 * {@code \t} and {@code \xHH} stand for the byte.
 */
class CsvRefusalsTest {
  private record Case(String kind, String title, String csv, String message) {
    @Override
    public String toString() {
      return kind + ": " + title;
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void refusesWithTheWholeMessage(Case refused) {
    InputRefusedException refusal =
        assertThrows(InputRefusedException.class, () -> read(refused.kind, bytes(refused.csv)));
    assertEquals(refused.message, refusal.getMessage());
  }

  @Test
  void coversAtLeastSixtyFilesOfThreeKinds() throws IOException {
    assertThat(cases()).hasSizeGreaterThan(60);
    assertThat(cases()).extracting(Case::kind).contains("pairs", "readings", "blocks");
    assertThat(cases()).extracting(Case::toString).doesNotHaveDuplicates();
  }

  private static void read(String kind, byte[] bytes) {
    switch (kind) {
      case "pairs" -> PairsCsv.read(bytes, "pairs.csv");
      case "readings" -> ReadingsCsv.read(bytes, "readings.csv");
      case "blocks" -> BlocksCsv.read(bytes, "blocks.csv");
      default -> throw new IllegalArgumentException("kind " + kind);
    }
  }

  static List<Case> cases() throws IOException {
    try (InputStream in = CsvRefusalsTest.class.getResourceAsStream("csv-refusals.txt")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Arrays.stream(text.split("(?m)^=== ")).skip(1).map(CsvRefusalsTest::parse).toList();
    }
  }

  private static Case parse(String text) {
    String[] halves = text.split("(?m)^---\n", 2);
    String[] top = halves[0].split("\n", 2);
    String[] name = top[0].split(": ", 2);
    return new Case(name[0], name[1], top[1], halves[1].stripTrailing());
  }

  private static byte[] bytes(String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int i = 0; i < text.length(); i++) {
      char character = text.charAt(i);
      char next = i + 1 < text.length() ? text.charAt(i + 1) : ' ';
      if (character == '\\' && next == 'x') {
        bytes.write(Integer.parseInt(text.substring(i + 2, i + 4), 16));
        i += 3;
      } else if (character == '\\' && (next == 'r' || next == 't')) {
        bytes.write(next == 'r' ? '\r' : '\t');
        i++;
      } else {
        bytes.writeBytes(Character.toString(character).getBytes(StandardCharsets.UTF_8));
      }
    }
    return bytes.toByteArray();
  }
}
