package fettle.library;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fettle.policy.Policy;
import fettle.refusal.InputRefusedException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PolicyFileTest {
  private static final String TEXT = new String(TestLaboratory.POLICY, StandardCharsets.UTF_8);

  private static Policy read(String text) {
    return PolicyFile.read(text.getBytes(StandardCharsets.UTF_8), "p.json");
  }

  private static String refusal(String from, String to) {
    if (!TEXT.contains(from)) {
      throw new IllegalArgumentException("from " + from + ": a part of the policy expected");
    }
    return assertThrows(InputRefusedException.class, () -> read(TEXT.replace(from, to)))
        .getMessage();
  }

  @Test
  void readsWhatItSays() {
    Policy policy = read(TEXT);
    assertEquals(0.05 * 300, policy.permissibleError().orElseThrow().at(300));
    assertEquals(0.06 * 301, policy.permissibleError().orElseThrow().at(301));
    assertEquals(1, policy.responseResolution().orElseThrow());
    assertEquals(LocalDate.of(2026, 2, 1), policy.limits().get("between-block-scatter").on());
    assertEquals(true, policy.example());
    assertEquals("example, entered by A. Person", policy.origin().orElseThrow());
  }

  @Test
  void refusesAMisspeltNameWithTheOneThatWasMeant() {
    assertEquals(
        """
        "permisibleError" is not known here.
          where     p.json, at $.permisibleError
          expected  format, formatVersion, intervals, permissibleError, title, example, \
        targetUncertainty, decisionRule, typeB, responseResolution, largestHardnessStep, limits
          do        did you mean "permissibleError"?""",
        refusal("permissibleError", "permisibleError"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"limit\": 0.03, |``|limit is missing.|$.limits.between-block-scatter.limit",
        "\"limit\": 0.03|\"limit\": \"3 %\"|limit is \"3 %\".|$.limits.between-block-scatter.limit",
        "\"value\": 1,|\"value\": 0,|value is 0.|$.responseResolution.value",
        "{\"relative\": 0.06}|{\"relative\": 6}|relative is 6.|$.permissibleError.steps[1].relative",
        "\"upTo\": 300, |``|A step that is not the last does not say how far it reaches."
            + "|$.permissibleError.steps[0].upTo",
        "{\"relative\": 0.06}|{\"upTo\": 200, \"relative\": 0.06}"
            + "|upTo 200 does not lie above that of the step before."
            + "|$.permissibleError.steps[1].upTo",
        "{\"relative\": 0.06}|{}|The step states neither relative nor absolute."
            + "|$.permissibleError.steps[1].relative",
        "\"between-block-scatter\"|\"Between block\"|\"Between block\" cannot be a check."
            + "|$.limits.Between block",
        "\"example\": true|\"example\": 1|example is 1.|$.example",
        "\"title\": \"Example of a test\"|\"title\": \" \"|title is \" \".|$.title"
      })
  void refusesWhatCannotBe(String from, String to, String what, String path) {
    String message = refusal(from, to);
    assertEquals(what, message.split("\n")[0]);
    assertEquals("  where     p.json, at " + path, message.split("\n")[1]);
  }

  @Test
  void refusesADateThatIsNone() {
    assertEquals(
        """
        on is "2026-02-30".
          where     p.json, at $.permissibleError.on
          expected  a date such as 2026-05-31
          do        correct it""",
        refusal("2026-02-01", "2026-02-30"));
  }

  @Test
  void refusesOtherKindsAndNumbers() {
    assertEquals(
        """
        The file is of another kind: "fettle-block".
          where     p.json
          expected  a policy: "format": "fettle-policy", "formatVersion": 1
          do        name a file that holds a policy""",
        refusal("fettle-policy", "fettle-block"));
    assertEquals(
        """
        The file is of format number 2, which is too new.
          where     p.json, at $.formatVersion
          expected  format number 1
          do        use a newer version of the program""",
        refusal("\"formatVersion\": 1", "\"formatVersion\": 2"));
    assertEquals(
        """
        The file is of format number 0, which is too old.
          where     p.json, at $.formatVersion
          expected  format number 1
          do        take the file anew from where it was written""",
        refusal("\"formatVersion\": 1", "\"formatVersion\": 0"));
    assertEquals(
        "The file does not say what it is.",
        refusal("\"format\": \"fettle-policy\", ", "").split("\n")[0]);
    assertEquals(
        "The file does not say which number its format has.",
        refusal("\"formatVersion\": 1, ", "").split("\n")[0]);
  }

  @Test
  void showsNoControlCharacterOfTheFile() {
    assertEquals(
        "\"a<U+001B>[31m\" is not known here.",
        refusal("\"example\": true", "\"a\\u001b[31m\": true").split("\n")[0]);
  }
}
