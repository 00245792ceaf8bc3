package fettle.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fettle.refusal.InputRefusedException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonTextTest {
  private static Object parse(String text) {
    return JsonText.parse(text.getBytes(StandardCharsets.UTF_8), "c.json");
  }

  @Test
  void readsEveryKindOfValue() {
    Object value =
        parse(" {\"a\": [1, -0.5, 2E+3, 0, true, false, null],\n\t\"é\\u00e9\\n\\\"\": {}} ");
    assertEquals(
        Map.of("a", Arrays.asList(1.0, -0.5, 2000.0, 0.0, true, false, null), "éé\n\"", Map.of()),
        value);
    assertEquals(List.of(), parse("[]"));
  }

  /** Places by RFC 8259; what is expected there by this reader. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"a\": 1, \"a\": 2}|column 10|each name once",
        "{\"a\": 01}|column 8|','",
        "{\"a\": +1}|column 7|a JSON value",
        "{\"a\": 1.}|column 9|a digit",
        "{\"a\": .5}|column 7|a JSON value",
        "{\"a\": 1e999}|column 7|a number within the range of a double",
        "{\"a\": NaN}|column 7|a JSON value",
        "{\"a\": tru}|column 10|a JSON value",
        "{\"a\": 1,}|column 9|a name in quotation marks",
        "[1,]|column 4|a JSON value",
        "{a: 1}|column 2|a name in quotation marks",
        "{\"a\" 1}|column 6|':'",
        "{} {}|column 4|the end of the file",
        "{\"a\": \"\\x\"}|column 9|an escape of JSON",
        "{\"a\": \"\\u12G4\"}|column 12|four hexadecimal digits",
        "// note|column 1|a JSON value"
      })
  void refusesWhatIsNotJson(String text, String place, String expected) {
    assertEquals(
        """
        The file is not well-formed JSON.
          where     c.json, line 1, %s
          expected  %s
          do        take the file anew from the laboratory folder or a backup"""
            .formatted(place, expected),
        assertThrows(InputRefusedException.class, () -> parse(text)).getMessage());
  }

  @Test
  void refusesControlCharactersDepthAndOtherEncodings() {
    assertEquals(
        "no control character inside quotation marks",
        assertThrows(InputRefusedException.class, () -> parse("[\"a\nb\"]")).expected());
    assertEquals(
        "at most 32 levels of nesting",
        assertThrows(InputRefusedException.class, () -> parse("[".repeat(100_000))).expected());
    assertEquals(
        "The file is not UTF-8 text.",
        assertThrows(
                InputRefusedException.class,
                () -> JsonText.parse(new byte[] {'"', (byte) 0xff, '"'}, "c.json"))
            .what());
  }
}
