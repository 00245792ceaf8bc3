package fettle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fettle.demo.DemoLaboratory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands on a laboratory folder: what they print, what they leave, how they end. */
class DossierCommandsTest {
  private static final String NAME = "nab-quenched-tempered-hv10";

  @TempDir static Path home;

  @BeforeAll
  static void fill() throws IOException {
    DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED).writeTo(home);
    done("block", "add", "--from", "incoming/blocks.csv");
    done(
        "dossier",
        "new",
        NAME,
        "--method",
        "uci",
        "--scale",
        "HV10",
        "--material",
        "nickel-aluminium bronze, quenched and tempered",
        "--test-force",
        "98",
        "--zero-frequency",
        "78858",
        "--probe",
        "P1",
        "--policy",
        "incoming/policy.json");
    String runs = "incoming/" + NAME + "/run-";
    done("readings", "add", NAME, runs + "1.csv", runs + "2.csv", runs + "3.csv", runs + "4.csv");
    done("fit", NAME);
  }

  private static CommandCall call(String... args) {
    return CommandCall.in(home, "", args);
  }

  private static CommandCall done(String... args) {
    CommandCall call = call(args);
    assertThat(call.err()).as(String.join(" ", args)).isEmpty();
    assertThat(call.status()).isZero();
    return call;
  }

  private static JsonNode json(String... args) throws IOException {
    return new ObjectMapper().readTree(call(args).out());
  }

  private static void refused(String message, String... args) {
    CommandCall call = call(args);
    assertThat(call.err()).isEqualTo("fettle: " + message + "\n");
    assertThat(call.out()).isEmpty();
    assertThat(call.status()).isEqualTo(2);
  }

  @Test
  void fitPrintsTheDocumentedFields() throws IOException {
    JsonNode fit = json("fit", NAME, "--json", "--at", "2400");
    assertThat(fit.get("dossier").asText()).isEqualTo(NAME);
    assertThat(fit.at("/recommended/model").asText()).isEqualTo("power");
    assertThat(fit.at("/recommended/reason").asText()).contains("simplest");
    assertThat(fit.get("chosen").asText()).isEqualTo("power");
    for (JsonNode candidate : fit.get("candidates")) {
      assertThat(List.copyOf(names(candidate)))
          .contains("model", "parameters", "chiSquared", "aicc", "leaveOneOutRms", "monotone");
    }
    assertThat(names(fit.get("range")))
        .contains("responseLow", "responseHigh", "hardnessLow", "hardnessHigh");
    assertThat(names(fit))
        .contains(
            "model",
            "coefficients",
            "covariance",
            "residualStandardDeviation",
            "degreesOfFreedom",
            "chiSquared",
            "converged",
            "iterations",
            "monotone",
            "points",
            "predictions");
    assertThat(fit.at("/predictions/0/response").asDouble()).isEqualTo(2400);
    JsonNode point = fit.at("/points/0");
    assertThat(point.get("deviation").asDouble())
        .isEqualTo(point.get("fitted").asDouble() - point.get("hardness").asDouble());
  }

  private static List<String> names(JsonNode node) {
    List<String> names = new java.util.ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }

  @Test
  void validateNamesTheWronglyCertifiedCheckBlockAndEndsWithOne() throws IOException {
    CommandCall call = call("validate", NAME, "--json");
    assertThat(call.status()).isEqualTo(1);
    JsonNode document = new ObjectMapper().readTree(call.out());
    assertThat(document.get("verdict").asText()).isEqualTo("fail");
    boolean found = false;
    for (JsonNode finding : document.get("findings")) {
      assertThat(names(finding))
          .contains("id", "severity", "passed", "value", "limit", "block", "message");
      found |=
          finding.get("id").asText().equals("check-block-en")
              && finding.get("block").asText().equals("NQ-92")
              && !finding.get("passed").asBoolean();
    }
    assertThat(found).isTrue();
  }

  @Test
  void listPrintsTheDocumentedFields() throws IOException {
    JsonNode list = json("dossier", "list", "--json");
    assertThat(list).hasSize(1);
    assertThat(names(list.get(0))).contains("dossier", "method", "scale", "material", "versions");
  }

  @Test
  void screenPrintsFlagsAndEndsWithNought() throws IOException {
    JsonNode flags = json("screen", NAME, "--json").get("flags");
    assertThat(flags.isArray()).isTrue();
  }

  @Test
  void recomputeGivesTheSameBytes() {
    assertThat(done("recompute", NAME).out()).isEqualTo(NAME + ": recomputed, the same bytes.\n");
  }

  @Test
  void applyConvertsAndSaysWhyNot() {
    CommandCall call =
        CommandCall.in(
            home,
            "id,response,n\na,2400,5\nb,1000,5\nc,9000,5\nd,oops,5\ne,2400,0\n",
            "apply",
            "--draft",
            NAME);
    assertThat(call.status()).isZero();
    List<String> lines = call.out().lines().toList();
    assertThat(lines.get(0)).isEqualTo("id,response,n,hardness,expanded_uncertainty,status");
    assertThat(lines.get(1)).matches("a,2400,5,\\d{3}\\.\\d{4},\\d\\.\\d{4},in range");
    assertThat(lines.get(2)).isEqualTo("b,1000,5,,,below range");
    assertThat(lines.get(3)).isEqualTo("c,9000,5,,,above range");
    assertThat(lines.get(4)).isEqualTo("d,oops,5,,,not a number");
    assertThat(lines.get(5)).isEqualTo("e,2400,0,,,not a number");
    assertThat(call.err()).contains("1 in range, 1 below range, 1 above range, 2 not a number");
  }

  @Test
  void applyKeepsADecimalComma() {
    CommandCall call =
        CommandCall.in(
            home, "response;note\n2400,5;x\n", "apply", "--draft", NAME, "--digits", "1");
    assertThat(call.out().lines().toList().get(1)).matches("2400,5;x;\\d{3},\\d;\\d+,\\d;in range");
  }

  @Test
  void applyAgreesWithTheFitsPrediction() throws IOException {
    JsonNode fit = json("fit", NAME, "--json", "--at", "2400");
    CommandCall call =
        CommandCall.in(home, "response\n2400\n", "apply", "--draft", NAME, "--digits", "9");
    double hardness = Double.parseDouble(call.out().lines().toList().get(1).split(",")[1]);
    assertThat(hardness)
        .isCloseTo(
            fit.at("/predictions/0/hardness").asDouble(),
            org.assertj.core.data.Offset.offset(1e-9));
  }

  @Test
  void aCurveFileAppliesLikeTheDraft() {
    String file = "curves/" + NAME + "/draft/curve.json";
    CommandCall byFile = CommandCall.in(home, "response\n2400\n", "apply", file);
    CommandCall byName = CommandCall.in(home, "response\n2400\n", "apply", "--draft", NAME);
    assertThat(byFile.out()).isEqualTo(byName.out());
  }

  @Test
  void helpOfApplyCarriesTheCautions() {
    assertThat(call("apply", "--help").out().replaceAll("\\s+", " "))
        .contains(Cautions.COMPARATIVE)
        .contains(Cautions.SPOT);
  }

  @Test
  void reportIsWrittenWhereItIsAskedFor() throws IOException {
    done("report", NAME, "--html", "r.html");
    assertThat(Files.readString(home.resolve("r.html"), StandardCharsets.UTF_8))
        .startsWith("<!DOCTYPE html>")
        .contains("NQ-92");
  }

  @Test
  void templatesAreReadAsTheirOwnForms() {
    for (String kind : List.of("blocks", "readings", "reverification")) {
      assertThat(done("template", kind).out()).startsWith("block,");
    }
  }

  @Test
  void wrongCallsAreRefusedWithTheWholeMessage() {
    refused(
        """
        There is no dossier nobody.
          where     %s
          expected  the name of a dossier that was begun
          do        `fettle dossier list` shows them all"""
            .formatted(home.resolve("curves")),
        "fit",
        "nobody");
    refused(
        """
        A model for a dossier is chosen by a person, with a reason.
          where     option --by
          expected  --model together with --by and --reason
          do        say who chooses it and why, or leave --model out to follow the recommendation""",
        "fit",
        NAME,
        "--model",
        "power");
    refused(
        """
        "cubic" is not a model.
          where     option --model
          expected  polynomial-1 to polynomial-10, power, log-polynomial-2, log-polynomial-3, \
        exponential, rational-1-1 or rational-2-2
          do        name one of them""",
        "fit",
        "--pairs",
        "x.csv",
        "--model",
        "cubic");
    refused(
        """
        "HX10" is not a hardness scale.
          where     option --scale
          expected  a scale such as HV10, HBW 10/3000, HRC or HRBW
          do        write the scale exactly as it stands on the certificate""",
        "dossier",
        "new",
        "x",
        "--method",
        "uci",
        "--scale",
        "HX10",
        "--material",
        "m");
    refused(
        """
        A dossier named %s exists.
          where     %s
          expected  a name that is not taken
          do        choose another name"""
            .formatted(NAME, home.resolve("curves").resolve(NAME)),
        "dossier",
        "new",
        NAME,
        "--method",
        "uci",
        "--scale",
        "HV10",
        "--material",
        "m");
    refused(
        """
        There is no block NOBODY.
          where     %s
          expected  the mark of a block that was added
          do        `fettle block list` shows them all"""
            .formatted(home.resolve("reference-blocks")),
        "block",
        "show",
        "NOBODY");
    refused(
        """
        The dossier holds no readings file named run-9.csv.
          where     dossier %s
          expected  one of run-1.csv, run-2.csv, run-3.csv, run-4.csv
          do        name one of them"""
            .formatted(NAME),
        "readings",
        "exclude",
        NAME,
        "--file",
        "run-9.csv",
        "--line",
        "3",
        "--by",
        "P",
        "--reason",
        "r");
    refused(
        """
        Line 9999 of run-1.csv holds no reading.
          where     dossier %s
          expected  lines 2 to 69; the header is line 1
          do        look the line up in the file"""
            .formatted(NAME),
        "readings",
        "exclude",
        NAME,
        "--file",
        "run-1.csv",
        "--line",
        "9999",
        "--by",
        "P",
        "--reason",
        "r");
    refused(
        """
        Both a curve and --draft are named.
          where     the call
          expected  a curve file, or --draft DOSSIER
          do        name one of them""",
        "apply",
        "x.json",
        "--draft",
        NAME);
    refused(
        """
        "7" is not a number of Monte Carlo trials.
          where     option --monte-carlo
          expected  a whole number from 1000 to 20000000, or adaptive
          do        1000000 gives two significant digits of the uncertainty with room to spare""",
        "fit",
        "--pairs",
        "x.csv",
        "--model",
        "power",
        "--monte-carlo",
        "7");
  }

  @Test
  void anUnknownOptionEndsWithTwo() {
    CommandCall call = call("fit", NAME, "--modell", "power");
    assertThat(call.status()).isEqualTo(2);
    assertThat(call.out()).isEmpty();
    assertThat(call.err()).contains("--modell").contains("fettle fit --help");
  }

  @Test
  void aFolderThatIsNotThereIsRefused() {
    refused(
        """
        The laboratory folder does not exist.
          where     %s
          expected  a folder; an empty one will do
          do        make the folder, or name another with --home"""
            .formatted(home.resolve("nowhere")),
        "dossier",
        "list",
        "--home",
        "nowhere");
  }
}
