package fettle.selfcheck;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A self-check that cannot fail proves nothing: it fails where it should. */
class CheckedValueTest {
  private static CheckedValue rounded(String printed, double got) {
    return new CheckedValue("x", printed, Optional.empty(), got);
  }

  @Test
  void roundsToThePrintedDigits() {
    assertTrue(rounded("1.234", 1.23449).passed());
    assertTrue(rounded("1.234", 1.2335).passed());
    assertFalse(rounded("1.234", 1.2346).passed());
    assertFalse(rounded("1.234", -1.234).passed());
    assertFalse(rounded("1.234", Double.NaN).passed());
    assertTrue(rounded("0.429796848199937E-03", 4.29796848199937e-4).passed());
    assertFalse(rounded("0.429796848199937E-03", 4.29796848199938e-4).passed());
  }

  @Test
  void withinChance() {
    assertTrue(new CheckedValue("u", "2.0", Optional.of("0.01"), 2.0099).passed());
    assertFalse(new CheckedValue("u", "2.0", Optional.of("0.01"), 2.0101).passed());
  }

  @Test
  void digits() {
    assertEquals(4, rounded("1.234", 1.234).digits());
    assertEquals(3, rounded("2.000", 2.002).digits(), 1e-6);
    assertEquals(0, rounded("2.000", 200).digits());
    assertEquals(0, rounded("2.000", Double.NaN).digits());
  }

  @Test
  void aCaseWithAWrongValueOrWithoutAFitFails() throws IOException {
    String text =
        """
        {"id": "t", "title": "t", "source": "t", "kind": "fit", "model": "polynomial-1",
         "data": {"x": ["1", "2", "3"], "y": ["2", "4", "6"]},
         "expected": [{"quantity": "b1", "printed": "2.000"}, {"quantity": "b1", "printed": "2.001"}]}
        """;
    CheckedCase one = SelfCheck.check(new CaseFile(new ObjectMapper().readTree(text)), 1);
    assertTrue(one.values().get(0).passed());
    assertFalse(one.values().get(1).passed());
    assertFalse(one.passed());
    CheckedCase none =
        SelfCheck.check(
            new CaseFile(
                new ObjectMapper()
                    .readTree(
                        text.replace("\"3\"", "\"3\", \"4\"")
                            .replace("[\"1\", \"2\", \"3\", \"4\"]", "[\"1\", \"1\", \"1\"]"))),
            1);
    assertFalse(none.passed());
    assertTrue(Double.isNaN(none.values().get(0).got()));
  }
}
