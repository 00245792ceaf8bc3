package fettle.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalParserTest {
  /**
   * Bits by CPython 3.11, whose conversion is David Gay's strtod: {@code struct.pack('>d',
   * float(text)).hex()}. Halfway cases, the ends of the range, more digits than a double has.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 0000000000000000",
    "-0, 8000000000000000",
    "1, 3ff0000000000000",
    "-12.5, c029000000000000",
    "0.1, 3fb999999999999a",
    ".5, 3fe0000000000000",
    "5., 4014000000000000",
    "+3.25, 400a000000000000",
    "245.4, 406eaccccccccccd",
    "1e23, 44b52d02c7e14af6",
    "9007199254740993, 4340000000000000",
    "9007199254740992.5, 4340000000000000",
    "123456789012345678, 437b69b4ba630f35",
    "8.5e22, 44b1ffdbf6b2b2eb",
    "1e22, 4480f0cf064dd592",
    "1e-22, 3b5e392010175ee6",
    "2.2250738585072012e-308, 0010000000000000",
    "2.2250738585072014e-308, 0010000000000000",
    "4.9e-324, 0000000000000001",
    "1.7976931348623157e308, 7fefffffffffffff",
    "0.000001234567890123456789, 3eb4b66dc01ec6fb",
    "179769313486231570000, 44237d99cc506d58",
    "1.00000000000000011102230246251565404236316680908203125, 3ff0000000000000",
    "1.00000000000000011102230246251565404236316680908203124, 3ff0000000000000",
    "6.0221407600000000E23, 44dfe185ca57c517",
    "7450580596923828.125e-22, 3ea9000000000000",
    "3.518437208883201171875e13, 42c0000000000002"
  })
  void givesTheNearestDouble(String text, String bits) {
    long expected = Long.parseUnsignedLong(bits, 16);
    double value = DecimalParser.parse(text, DecimalMark.POINT);
    assertEquals(expected, Double.doubleToRawLongBits(value));
    String comma = text.replace('.', ',');
    assertEquals(value, DecimalParser.parse(comma, DecimalMark.COMMA));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "-",
        "+",
        ".",
        "-.",
        "e5",
        "1e",
        "1e+",
        "1e5.0",
        "1e5f",
        "1f",
        "1d",
        "1D",
        "NaN",
        "Infinity",
        "0x10",
        "0x1p3",
        "1_000",
        "1,5",
        "1.2.3",
        "--1",
        "+-1",
        "1-",
        "1 2",
        "½",
        "１２",
        "٣"
      })
  void refusesWhatIsNoDecimalNumber(String text) {
    assertTrue(Double.isNaN(DecimalParser.parse(text, DecimalMark.POINT)));
  }

  // The platform's own conversion is the second opinion; the quick path must never differ from it.
  @Test
  void agreesWithThePlatformOnRandomNumbers() {
    Random random = new Random(20260301);
    for (int i = 0; i < 300_000; i++) {
      String text = randomNumber(random);
      assertEquals(Double.parseDouble(text), DecimalParser.parse(text, DecimalMark.POINT), text);
    }
  }

  private static String randomNumber(Random random) {
    StringBuilder text = new StringBuilder(random.nextInt(4) == 0 ? "-" : "");
    int digits = 1 + random.nextInt(random.nextInt(10) == 0 ? 30 : 17);
    int mark = random.nextInt(digits + 3);
    for (int i = 0; i < digits; i++) {
      text.append(i == mark ? "." : "").append((char) ('0' + random.nextInt(10)));
    }
    if (random.nextInt(3) == 0) {
      text.append(random.nextBoolean() ? 'e' : 'E').append(random.nextInt(60) - 30);
    }
    return text.toString();
  }

  @Test
  void tellsNumbersLostToZeroFromZero() {
    assertTrue(DecimalParser.hasUnderflown("0.001e-999"));
    assertTrue(!DecimalParser.hasUnderflown("0.000e-999"));
    assertTrue(!DecimalParser.hasUnderflown("0"));
  }
}
