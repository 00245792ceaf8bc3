package fettle.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The published cases as the user's machine recomputes them. */
class SelfCheckCommandTest {
  @TempDir private Path directory;

  @Test
  void everyPublishedValueIsMetWithinTenSeconds() throws IOException {
    Call call =
        Assertions.assertTimeout(
            Duration.ofSeconds(10), () -> Call.in(directory, "self-check", "--json"));
    JsonNode json = call.json();
    int values = 0;
    for (JsonNode one : json.get("cases")) {
      assertFalse(one.get("source").textValue().isBlank());
      for (JsonNode value : one.get("values")) {
        values++;
        assertTrue(value.get("passed").booleanValue(), one.get("id") + ": " + value);
        assertTrue(value.get("digits").doubleValue() > 0.5, one.get("id") + ": " + value);
      }
      assertTrue(one.get("passed").booleanValue());
    }
    assertTrue(json.get("passed").booleanValue());
    assertTrue(values >= 40 && json.get("cases").size() >= 12, values + " values");
    assertEquals("", call.err());
    assertEquals(0, call.status());
  }

  @Test
  void textNamesSourceAndEndsWithACount() {
    Call call = Call.in(directory, "self-check");
    assertEquals(0, call.status());
    assertTrue(call.out().contains("NIST/ITL Statistical Reference Datasets"), call.out());
    assertTrue(call.out().contains("b0 "), call.out());
    assertTrue(
        call.out().strip().matches("(?s).*\\d+ published values of \\d+ cases: all met\\."),
        call.out());
    assertFalse(call.out().contains("DIFFERS"), call.out());
  }
}
