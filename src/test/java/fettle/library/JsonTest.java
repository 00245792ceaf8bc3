package fettle.library;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fettle.refusal.InputRefusedException;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonTest {
  /** RFC 8785, Appendix B: bits of a double and its serialization (from memory). */
  @ParameterizedTest
  @CsvSource({
    "0000000000000000, 0",
    "8000000000000000, 0",
    "0000000000000001, 5e-324",
    "8000000000000001, -5e-324",
    "7fefffffffffffff, 1.7976931348623157e+308",
    "ffefffffffffffff, -1.7976931348623157e+308",
    "4340000000000000, 9007199254740992",
    "c340000000000000, -9007199254740992",
    "4430000000000000, 295147905179352830000",
    "44b52d02c7e14af5, 9.999999999999997e+22",
    "44b52d02c7e14af6, 1e+23",
    "44b52d02c7e14af7, 1.0000000000000001e+23",
    "444b1ae4d6e2ef4e, 999999999999999700000",
    "444b1ae4d6e2ef4f, 999999999999999900000",
    "444b1ae4d6e2ef50, 1e+21",
    "3eb0c6f7a0b5ed8c, 9.999999999999997e-7",
    "3eb0c6f7a0b5ed8d, 0.000001",
    "41b3de4355555553, 333333333.3333332",
    "41b3de4355555555, 333333333.3333333",
    "becbf647612f3696, -0.0000033333333333333333",
    "43143ff3c1cb0959, 1424953923781206.2"
  })
  void writesNumbersAsTheStandardDoes(String bits, String expected) {
    double value = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));
    assertEquals(
        "{\"x\":" + expected + "}",
        new String(
            Json.canonical(Json.object().set("x", Json.number(value))), StandardCharsets.UTF_8));
  }

  @Test
  void readsBackEveryDoubleToTheBit() {
    Random random = new Random(20260101);
    for (int i = 0; i < 20_000; i++) {
      double value = Double.longBitsToDouble(random.nextLong());
      if (Double.isFinite(value) && value != 0) {
        byte[] canonical = Json.canonical(Json.object().set("x", Json.number(value)));
        byte[] readable = Json.readable(Json.object().set("x", Json.number(value)));
        for (byte[] form : new byte[][] {canonical, readable}) {
          double back = Json.parse(form, "f").get("x").doubleValue();
          assertEquals(Double.doubleToLongBits(value), Double.doubleToLongBits(back), "" + value);
        }
      }
    }
  }

  @Test
  void numbersThatJsonCannotCarryAreAProgrammingError() {
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> Json.number(Double.NaN));
    assertEquals("value NaN: finite expected", error.getMessage());
  }

  private static String refusal(String text) {
    return assertThrows(
            InputRefusedException.class,
            () -> Json.parse(text.getBytes(StandardCharsets.UTF_8), "a.json"))
        .getMessage();
  }

  @Test
  void refusesWhatIsCutOff() {
    String expected =
        """
        The file is empty or ends too early.
          where     a.json
          expected  a whole JSON file
          do        take the file anew from a backup""";
    assertEquals(expected, refusal(""));
    assertEquals(expected, refusal("{\"a\": [1, 2"));
    assertEquals(expected, refusal("{\"a\": \"tex"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"a\": 1, \"a\": 2}|1, column 13",
        "{\"a\": 1} {}|1, column 10",
        "{\"a\": 01}|1, column 8",
        "{a: 1}|1, column 2",
        "{\"a\": NaN}|1, column 10"
      })
  void refusesWhatIsNotJson(String text, String place) {
    assertEquals(
        """
        The file is not well-formed JSON.
          where     a.json, line %s
          expected  JSON with each name once and nothing after its end
          do        correct that place, or take the file anew from a backup"""
            .formatted(place),
        refusal(text));
  }

  @Test
  void refusesDepthAndLengthBeyondReason() {
    String deep = "{\"a\":" + "[".repeat(40) + "]".repeat(40) + "}";
    assertEquals(
        "The file is deeper or larger than any file of this kind: ",
        refusal(deep).split("Document")[0]);
    String longText = "{\"a\":\"" + "x".repeat(200_000) + "\"}";
    assertEquals(
        "The file is deeper or larger than any file of this kind: ",
        refusal(longText).split("String")[0]);
    String longNumber = "{\"a\":" + "1".repeat(1000) + "}";
    assertEquals(
        "The file is deeper or larger than any file of this kind: ",
        refusal(longNumber).split("Number")[0]);
  }

  @Test
  void refusesWhatIsNoObject() {
    assertEquals(
        """
        The file holds no JSON object.
          where     a.json
          expected  an object in braces
          do        check what this file is""",
        refusal("[1]"));
  }
}
