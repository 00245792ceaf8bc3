package fettle.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Pairs that give no fit, as the user sees them: exit status 2, the whole message on standard
 * error, nothing on standard output; in a batch the other files go on and the status is 1.
 */
class FitRefusalsTest {
  @TempDir private Path directory;

  private Call fit(String model, String csv, String... further) throws IOException {
    Files.writeString(directory.resolve("pairs.csv"), csv);
    String[] args = new String[further.length + 6];
    System.arraycopy(
        new String[] {"fit", "--pairs", "pairs.csv", "--model", model, "--json"}, 0, args, 0, 6);
    System.arraycopy(further, 0, args, 6, further.length);
    return Call.in(directory, args);
  }

  private static String message(String sentence) {
    return "fettle: No fit: "
        + sentence
        + ".\n  where     pairs.csv\n"
        + "  expected  pairs that determine the model's parameters\n"
        + "  do        choose a model with fewer parameters, or correct or add pairs\n";
  }

  private void assertRefused(String sentence, Call call) {
    assertEquals(message(sentence), call.err().replace(System.lineSeparator(), "\n"));
    assertEquals("", call.out());
    assertEquals(2, call.status());
  }

  private static String plain(double... values) {
    StringBuilder csv = new StringBuilder("response,hardness\n");
    for (int i = 0; i < values.length; i += 2) {
      csv.append(values[i]).append(',').append(values[i + 1]).append('\n');
    }
    return csv.toString();
  }

  @Test
  void asManyPointsAsParameters() throws IOException {
    assertRefused(
        "2 points for the 2 parameters of polynomial-1; at least 3 are needed",
        fit("polynomial-1", plain(1, 10, 2, 20)));
    assertRefused(
        "3 points for the 3 parameters of polynomial-2; at least 4 are needed",
        fit("polynomial-2", plain(1, 10, 2, 20, 3, 40)));
    assertRefused(
        "5 points for the 5 parameters of rational-2-2; at least 6 are needed",
        fit("rational-2-2", plain(1, 10, 2, 20, 3, 40, 4, 50, 5, 55)));
  }

  @Test
  void equalResponses() throws IOException {
    assertRefused(
        "all responses equal 5.0; a curve needs responses that differ",
        fit("polynomial-1", plain(5, 10, 5, 20, 5, 30)));
  }

  @Test
  void tooFewDifferentResponses() throws IOException {
    assertRefused(
        "the points do not determine the 3 parameters of polynomial-2 (condition number Infinity)",
        fit("polynomial-2", plain(1, 10, 1, 11, 2, 20, 2, 21)));
    assertRefused(
        "the responses do not determine the 3 parameters of log-polynomial-2; more responses must"
            + " differ",
        fit("log-polynomial-2", plain(1, 10, 1, 11, 2, 20, 2, 21)));
    assertRefused(
        "the points do not determine the 3 parameters of rational-1-1 (condition number Infinity)",
        fit("rational-1-1", plain(1, 10, 1, 11, 2, 20, 2, 21)));
  }

  @Test
  void outsideTheDomain() throws IOException {
    assertRefused(
        "response -1.0 is not above 0, and this model takes its logarithm",
        fit("power", plain(-1, 10, 2, 20, 3, 30)));
    assertRefused(
        "hardness -10.0 is not above 0, and model exponential is always positive",
        fit("exponential", plain(1, -10, 2, 20, 3, 30)));
  }

  @Test
  void beyondTheRangeOfNumbers() throws IOException {
    assertRefused(
        "hardness of point 2 is 1.0E300, beyond 1.0E150, where squares leave the range of numbers",
        fit("polynomial-1", plain(1, 10, 2, 1e300, 3, 30)));
    assertRefused(
        "response of point 1 is -1.0E300, beyond 1.0E150, where squares leave the range of"
            + " numbers",
        fit("polynomial-1", plain(-1e300, 10, 2, 20, 3, 30)));
    assertRefused(
        "the coefficients of exponential in the response's own unit leave the range of numbers;"
            + " take a larger or smaller unit",
        fit("exponential", plain(2000, 1, 2001, 2.1, 2002, 4, 2003, 8.2)));
  }

  @Test
  void uncertaintyBeyondTheRangeOfNumbers() throws IOException {
    assertRefused(
        "the hardness variance of point 1 is Infinity; a finite value of 0 or above is needed",
        fit("polynomial-1", "response,hardness,u_hardness\n1,10,1e200\n2,20,1\n3,30,1\n"));
  }

  @Test
  void scatterNeedsStatedUncertaintiesAndFreedom() throws IOException {
    assertRefused(
        "between-block scatter needs stated uncertainties to be told apart from",
        fit("polynomial-1", plain(1, 10, 2, 20, 3, 31, 4, 39), "--between-block"));
    assertRefused(
        "3 points leave no freedom to estimate the scatter between them beside the 2 parameters of"
            + " polynomial-1",
        fit(
            "polynomial-1",
            "response,hardness,u_hardness\n1,10,1\n2,20,1\n3,31,1\n",
            "--between-block"));
  }

  @Test
  void noMinimum() throws IOException {
    // The ratio's pole wanders through the points: no step is ever the last.
    Call call = fit("rational-2-2", plain(-1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7));
    assertTrue(
        call.err().startsWith("fettle: No fit: model rational-2-2 stopped after "), call.err());
    assertTrue(call.err().contains(" iterations where no step improves the fit, "), call.err());
    assertEquals("", call.out());
    assertEquals(2, call.status());
  }

  @Test
  void badlyDisagreeingPointsDoNotSettle() throws IOException {
    StringBuilder csv = new StringBuilder("response,hardness,u_response,u_hardness\n");
    for (int i = 1; i <= 7; i++) {
      csv.append(i).append(',').append(i % 2 == 1 ? 1 : 100).append(",0.1,0.1\n");
    }
    Call call = fit("exponential", csv.toString());
    assertTrue(
        call.err()
            .matches(
                "(?s)fettle: No fit: model exponential did not settle in 500 iterations; the last"
                    + " step still changed a parameter by \\d\\.\\de[-+]\\d+ of its size\\.\n.*"),
        call.err());
    assertEquals("", call.out());
    assertEquals(2, call.status());
  }

  @Test
  void curveThatIsNotMonotoneGoesOnAndSaysSo() throws IOException {
    String csv = plain(1, 10, 2, 20, 3, 24, 4, 21, 5, 9);
    Call call = fit("polynomial-2", csv);
    assertEquals(0, call.status());
    assertEquals(false, call.json().get("monotone").booleanValue());
    Call text = Call.in(directory, "fit", "--pairs", "pairs.csv", "--model", "polynomial-2");
    assertEquals(0, text.status());
    assertTrue(
        text.out()
            .contains(
                "The curve is not strictly monotone over the points: one response may have two"
                    + " hardnesses."),
        text.out());
  }

  @Test
  void aBatchGoesOnPastABadFile() throws IOException {
    Path folder = Files.createDirectory(directory.resolve("many"));
    Files.writeString(folder.resolve("a.csv"), plain(1, 10, 2, 20, 3, 31));
    Files.writeString(folder.resolve("b.csv"), plain(5, 10, 5, 20, 5, 30));
    Files.writeString(folder.resolve("c.csv"), "response,hardness\n1,10\n2,x\n");
    Files.writeString(folder.resolve("d.csv"), plain(1, 10, 2, 20, 3, 31));
    Call call = Call.in(directory, "fit", "--pairs", "many", "--model", "polynomial-1", "--json");
    assertEquals(1, call.status());
    String[] lines = call.out().split("\\R");
    assertEquals(4, lines.length);
    ObjectMapper mapper = new ObjectMapper();
    JsonNode good = mapper.readTree(lines[0]);
    assertEquals("many/a.csv", good.get("file").textValue());
    assertEquals(2, good.get("coefficients").size());
    JsonNode bad = mapper.readTree(lines[1]);
    assertEquals(2, bad.size());
    assertEquals("many/b.csv", bad.get("file").textValue());
    assertEquals(
        message("all responses equal 5.0; a curve needs responses that differ")
            .replace("fettle: ", "")
            .replace("pairs.csv", "many/b.csv")
            .strip(),
        bad.get("error").textValue());
    JsonNode unreadable = mapper.readTree(lines[2]);
    assertEquals("many/c.csv", unreadable.get("file").textValue());
    assertTrue(unreadable.get("error").textValue().contains("line 3"), lines[2]);
    assertEquals("many/d.csv", mapper.readTree(lines[3]).get("file").textValue());
    assertEquals(
        good.get("coefficients").toString(),
        mapper.readTree(lines[3]).get("coefficients").toString());
  }
}
