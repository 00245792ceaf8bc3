package fettle.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.calibration.Analysis;
import fettle.calibration.Calibration;
import fettle.calibration.Campaign;
import fettle.calibration.ModelChoice;
import fettle.fit.ModelId;
import fettle.policy.Policy;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

class CalibrationReportTest {
  private static final Campaign FULL =
      SimulatedCampaign.vickers(10, 3, SimulatedCampaign.vickersPolicy());
  private static final Analysis ANALYSIS = Calibration.analyse(FULL, Optional.empty());
  private static final String REPORT =
      ReportSamples.written(ReportSamples.content(ANALYSIS, ReportSamples.findings(""), "draft"));
  private static final List<String> SECTIONS =
      List.of(
          "identity",
          "range",
          "blocks",
          "readings",
          "scatter",
          "candidates",
          "curve",
          "budget",
          "check-blocks",
          "findings",
          "cautions",
          "verify");

  @Test
  void isWellFormedAndHasEverySectionInOrder() {
    assertEquals(SECTIONS, sections(parse(REPORT)));
  }

  @Test
  void showsEveryBlockReadingLeftOutAndCheckBlock() {
    Document report = parse(REPORT);
    assertEquals(13, rows(report, "blocks"));
    assertEquals(3, rows(report, "check-blocks"));
    assertEquals(1, rows(report, "readings"));
    assertEquals(ANALYSIS.candidates().size(), rows(report, "candidates"));
    assertEquals(13, textOf(report, "readings").split("n = 1[12]", -1).length - 1);
    assertThat(textOf(report, "readings"))
        .contains("156 readings on 13 blocks, of which 1 was left out.")
        .contains("probe slipped off the block, seen while reading");
  }

  @Test
  void roundsWhatTheAnalysisHoldsByItsUncertainty() {
    var block = ANALYSIS.blocks().get(0);
    assertThat(textOf(parse(REPORT), "blocks"))
        .contains(
            Figures.pair(
                block.certificate().certified(), block.certificate().expandedUncertainty()));
    double b = ANALYSIS.chosen().orElseThrow().fit().chosen().reported().values()[1];
    assertThat(textOf(parse(REPORT), "curve")).contains(Double.toString(b)).contains("h = a rb");
  }

  @Test
  void namesAbsentBudgetLinesAsAbsent() {
    assertThat(textOf(parse(REPORT), "budget"))
        .contains("temperature result absent: nothing is stated or known of it")
        .contains("Absent and therefore counted as zero: temperature.");
  }

  @Test
  void putsWhatStopsReleaseFirstAndPassedLast() {
    assertThat(textOf(parse(REPORT), "findings"))
        .containsSubsequence(
            "Stops release (1)",
            "Block C2 deviates by 6.2 HV10, En = 1.31, limit 1.",
            "Needs a written reason (1)",
            "Is the scatter between blocks small enough to stand unexplained?",
            "Notes (1)",
            "Data missing.",
            "Passed (1)",
            "10 fitting blocks, at least 5.");
    assertThat(textOf(parse(REPORT), "findings"))
        .contains("To do: Look at the certificates of the blocks with the largest deviations.");
  }

  @Test
  void warnsOfADraftAndOfSimulatedNumbers() {
    Element watermark = (Element) parse(REPORT).getElementsByTagName("body").item(0);
    assertThat(plain(watermark)).startsWith("draft · simulated");
    assertThat(REPORT).contains("They must never be used for a part.");
    String released = ReportSamples.written(ReportSamples.content(ANALYSIS, List.of(), "released"));
    assertThat(plain((Element) parse(released).getElementsByTagName("body").item(0)))
        .startsWith("simulated Calibration curve report")
        .contains("approved C. Person 2026-02-24 in order")
        .contains("No acceptance check was run for this report.");
  }

  @Test
  void givesTheSameCharactersFromTheSameCampaign() {
    Analysis again =
        Calibration.analyse(
            SimulatedCampaign.vickers(10, 3, SimulatedCampaign.vickersPolicy()), Optional.empty());
    assertEquals(
        REPORT,
        ReportSamples.written(ReportSamples.content(again, ReportSamples.findings(""), "draft")));
  }

  @Test
  void fetchesNothingAndRunsNothing() {
    String own = REPORT.replaceAll("xmlns(:\\w+)?=\"[^\"]*\"", "");
    assertThat(own)
        .doesNotContain("http:", "https:", "//", "<script", "<link", "<img", "@import", " src=")
        .doesNotContain(" href=", "javascript:");
    assertThat(own.replaceAll("url\\(#[a-z0-9-]+\\)", "")).doesNotContain("url(");
  }

  @Test
  void usesEveryIdOnceAndRefersToIdsThatExist() {
    List<String> ids = new ArrayList<>();
    Set<String> referred = new HashSet<>();
    NodeList all = parse(REPORT).getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      Element element = (Element) all.item(i);
      if (element.hasAttribute("id")) {
        ids.add(element.getAttribute("id"));
      }
      for (String name : element.getAttribute("aria-labelledby").split(" ")) {
        referred.add(name);
      }
    }
    Matcher url = Pattern.compile("url\\(#([^)]+)\\)").matcher(REPORT);
    while (url.find()) {
      referred.add(url.group(1));
    }
    referred.remove("");
    assertThat(ids).doesNotHaveDuplicates().containsAll(referred);
    assertThat(referred).hasSizeGreaterThan(30);
  }

  @Test
  void keepsChartTextAsText() {
    NodeList charts = parse(REPORT).getElementsByTagName("svg");
    assertEquals(13 + 3, charts.getLength());
    assertThat(REPORT).contains(">Frequency shift / Hz</text>", ">Hardness / HV10</text>");
    // A decimal comma would be that of the machine the tests run on.
    assertThat(REPORT).doesNotContainPattern("<text[^>]*>\\d+,\\d+</text>");
  }

  @Test
  void neutralisesMarkupInEveryText() throws IOException {
    String hostile = "\"}</style></title></svg><script>alert('x')</script>&amp;<b>]]>\u0001${1+1}";
    Campaign campaign = SimulatedCampaign.withTexts(hostile);
    ModelChoice choice = new ModelChoice(new ModelId("power"), "C. Person" + hostile, hostile);
    Analysis analysis = Calibration.analyse(campaign, Optional.of(choice));
    ReportContent content =
        ReportSamples.content(analysis, ReportSamples.findings(hostile), "draft");
    String report =
        ReportSamples.written(
            new ReportContent(
                analysis,
                content.findings(),
                List.of(),
                "draft" + hostile,
                Optional.empty(),
                hostile,
                hostile,
                content.date(),
                hostile,
                Optional.of(hostile),
                List.of(new ReportInput(hostile, "ab".repeat(32))),
                content.steps()));
    assertThat(report).doesNotContain("<script").doesNotContain("</style></title>");
    Document document = parse(report);
    assertEquals(SECTIONS, sections(document));
    assertEquals(1, document.getElementsByTagName("style").getLength());
    String shown = "<script>alert('x')</script>&amp;<b>]]>\ufffd${1+1}";
    for (String section : List.of("identity", "blocks", "readings", "findings", "verify")) {
      assertThat(textOf(document, section)).as(section).contains(shown);
    }
    assertThat(textOf(document, "candidates")).contains("C. Person\"}</style>");
    assertThat(((Element) document.getElementsByTagName("style").item(0)).getTextContent())
        .doesNotContain("alert(");
  }

  @Test
  void saysSoWhereThereIsNoCurve() {
    Campaign campaign = SimulatedCampaign.vickers(3, 1, SimulatedCampaign.vickersPolicy());
    String report = ReportSamples.written(ReportSamples.content(campaign, Optional.empty()));
    Document document = parse(report);
    assertEquals(SECTIONS, sections(document));
    assertThat(textOf(document, "range")).contains("There is no curve, hence no range");
    assertThat(textOf(document, "curve")).contains("No curve:");
    assertThat(textOf(document, "budget")).contains("No curve, hence no budget.");
    assertThat(textOf(document, "candidates")).contains("None recommended");
  }

  @Test
  void saysSoWhereNothingIsStated() {
    Campaign campaign = SimulatedCampaign.vickers(6, 0, Policy.EMPTY);
    Document document =
        parse(
            ReportSamples.written(
                ReportSamples.content(
                    Calibration.analyse(campaign, Optional.empty()), List.of(), "in review")));
    assertThat(textOf(document, "identity")).contains("Decision rule not stated");
    assertThat(textOf(document, "check-blocks")).contains("None: no block was kept out");
    assertThat(textOf(document, "curve")).contains("The policy states no permissible error");
    assertThat(textOf(document, "budget")).contains("operator, drift of the probe, temperature");
  }

  @Test
  void keepsOrdinalScalesInTheirOwnUnits() {
    Campaign campaign = SimulatedCampaign.rockwell(8, 3, SimulatedCampaign.rockwellPolicy());
    String report = ReportSamples.written(ReportSamples.content(campaign, Optional.empty()));
    Document document = parse(report);
    assertThat(report).contains(">Fitted − certified / HRC</text>");
    assertThat(textOf(document, "budget")).doesNotContain("% of the hardness");
    assertThat(textOf(document, "identity")).contains("Largest permissible error 2\u00a0HRC");
    assertThat(textOf(document, "candidates")).contains("τ\u00a0/\u00a0HRC");
    assertThat(textOf(document, "cautions")).contains("wear eye protection");
  }

  private static Document parse(String report) {
    try {
      return DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .parse(new InputSource(new StringReader(report)));
    } catch (ParserConfigurationException | SAXException | IOException failure) {
      throw new AssertionError(failure);
    }
  }

  private static List<String> sections(Document report) {
    List<String> ids = new ArrayList<>();
    NodeList sections = report.getElementsByTagName("section");
    for (int i = 0; i < sections.getLength(); i++) {
      ids.add(((Element) sections.item(i)).getAttribute("id"));
    }
    return ids;
  }

  private static Element section(Document report, String id) {
    NodeList sections = report.getElementsByTagName("section");
    for (int i = 0; i < sections.getLength(); i++) {
      Element section = (Element) sections.item(i);
      if (section.getAttribute("id").equals(id)) {
        return section;
      }
    }
    throw new AssertionError("no section " + id);
  }

  /** Text of a section with cells and lines apart. */
  private static String textOf(Document report, String id) {
    return plain(section(report, id));
  }

  private static String plain(Element element) {
    StringBuilder text = new StringBuilder();
    append(element, text);
    return text.toString().replaceAll("[ \\n]+", " ").strip();
  }

  private static void append(Element element, StringBuilder text) {
    boolean inline = Set.of("i", "b", "sub", "sup", "code").contains(element.getTagName());
    text.append(inline ? "" : " ");
    for (var child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
      if (child instanceof Element inner) {
        append(inner, text);
      } else {
        text.append(child.getNodeValue());
      }
    }
    text.append(inline ? "" : " ");
  }

  private static int rows(Document report, String id) {
    NodeList bodies = section(report, id).getElementsByTagName("tbody");
    return ((Element) bodies.item(0)).getElementsByTagName("tr").getLength();
  }
}
