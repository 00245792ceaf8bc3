package fettle.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fettle.refusal.InputRefusedException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CellTest {
  private static Cell option(String text) {
    return Cell.ofOption("--value", text);
  }

  // ISO 8601-1:2019, 5.4.2: extended format, reduced to minutes or with decimal seconds.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-03-31T14:05|2026-03-31T14:05",
        "2026-03-31 14:05:09|2026-03-31T14:05:09",
        "2026-03-31t14:05:09.25|2026-03-31T14:05:09.250",
        "2026-03-31T14:05:09,25|2026-03-31T14:05:09.250",
        "2026-03-31T14:05Z|2026-03-31T14:05",
        "2026-03-31T14:05:09+01:00|2026-03-31T14:05:09",
        "2026-03-31 14:05 -0330|2026-03-31T14:05",
      })
  void readsDateAndTimeAsWritten(String text, String expected) {
    assertEquals(LocalDateTime.parse(expected), option(text).dateTime());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-03-31T24:00",
        "2026-03-31T14",
        "2026-03-31T14:60",
        "2026-03-31T14:05+25:00",
        "2026-03-31T14:05 PM",
        "2026-03-31x14:05",
        "20260331T1405",
        "2026-3-31T14:05",
        "now",
        "2026-03-31T"
      })
  void refusesOtherTimes(String text) {
    assertThrows(InputRefusedException.class, () -> option(text).dateTime());
  }

  @Test
  void readsDays() {
    assertEquals(LocalDate.of(2024, 2, 29), option(" 2024-02-29 ").date());
    for (String text : new String[] {"2023-02-29", "29.02.2024", "2024-02-29T10:00", "24-02-29"}) {
      assertThrows(InputRefusedException.class, () -> option(text).date());
    }
  }

  @Test
  void namesTheOptionInARefusal() {
    assertEquals(
        """
        "12,5" has a comma, which is no decimal mark here.
          where     option --value
          expected  a number with a decimal point such as 12.5, and no thousands separators
          do        write a decimal point, or separate the cells of the file by semicolons""",
        assertThrows(InputRefusedException.class, () -> option("12,5").decimal()).getMessage());
    assertEquals(
        """
        "7" is out of range.
          where     option --value
          expected  a whole number from 1 to 5
          do        correct the number""",
        assertThrows(InputRefusedException.class, () -> option("7").integer(1, 5)).getMessage());
    assertEquals(5, option("5.0").integer(1, 5));
  }

  @Test
  void keepsTextToOneLineUnlessItIsProse() {
    assertEquals("a\nb", option(" a\nb ").prose());
    assertEquals(
        "The text has more than one line.",
        assertThrows(InputRefusedException.class, () -> option("a\nb").text()).what());
    assertEquals(
        "The text holds the control character U+202E.",
        assertThrows(InputRefusedException.class, () -> option("a\u202eb").prose()).what());
  }

  @Test
  void cutsLongTextAndRefusesTooLongOne() {
    InputRefusedException cut =
        assertThrows(InputRefusedException.class, () -> option("x".repeat(100)).decimal());
    assertEquals("\"" + "x".repeat(60) + "…\" is not a number.", cut.what());
    assertThrows(InputRefusedException.class, () -> option("x".repeat(2_001)).text());
    assertThrows(InputRefusedException.class, () -> option("0." + "1".repeat(400)).exactDecimal());
  }
}
