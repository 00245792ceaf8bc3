package fettle.report;

import fettle.block.BlockRole;
import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.calibration.Campaign;
import fettle.reading.Exclusion;
import fettle.reading.Reading;
import freemarker.template.TemplateModel;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.jfree.chart.JFreeChart;

/** The readings: who took them in which runs, how they lie, what was left out by whom and why. */
final class ReadingsSection {
  private static final int STRIP_WIDTH = 224;
  private static final int STRIP_HEIGHT = 104;

  private ReadingsSection() {}

  /**
   * What the template shows.
   *
   * @param sentences counts of readings, runs, operators
   * @param scale what the strips' vertical axis is
   * @param marks marks of the operators
   * @param strips one a block
   * @param responseHeading heading of the responses left out
   * @param exclusions readings left out
   */
  public record View(
      List<String> sentences,
      String scale,
      List<Fact> marks,
      List<Strip> strips,
      String responseHeading,
      List<ExclusionRow> exclusions) {}

  /**
   * One block's strip.
   *
   * @param block id
   * @param caption certified value and count
   * @param svg the chart
   */
  public record Strip(String block, String caption, TemplateModel svg) {}

  /**
   * One reading left out.
   *
   * @param block block
   * @param place file and line
   * @param run run and operator
   * @param response response
   * @param difference difference from the block's mean
   * @param by person
   * @param on day
   * @param reason reason
   */
  public record ExclusionRow(
      String block,
      String place,
      String run,
      String response,
      String difference,
      String by,
      String on,
      String reason) {}

  static View of(ReportContent content) {
    Analysis analysis = content.analysis();
    Units units = Units.of(analysis.campaign().dossier().identity());
    List<String> operators = ReadingsStrip.operators(analysis.campaign());
    List<Fact> marks = new ArrayList<>();
    for (int k = 0; k < operators.size(); k++) {
      marks.add(new Fact(operators.get(k), ReadingsStrip.mark(k)));
    }
    return new View(
        sentences(analysis, operators),
        analysis.variance().relative()
            ? "percent of the block’s mean"
            : units.response().isBlank()
                ? "the response’s own unit"
                : units.response().strip().replace(Figures.NBSP, ""),
        marks,
        strips(analysis, units),
        units.responseHeading("Response"),
        exclusions(analysis));
  }

  private static List<String> sentences(Analysis analysis, List<String> operators) {
    Campaign campaign = analysis.campaign();
    TreeSet<String> runs = new TreeSet<>();
    campaign.readings().forEach(reading -> reading.run().ifPresent(runs::add));
    long excluded = campaign.readings().stream().filter(campaign::isExcluded).count();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        campaign.readings().size()
            + " readings on "
            + analysis.blocks().size()
            + " blocks, of which "
            + (excluded == 0 ? "none was" : excluded + (excluded == 1 ? " was" : " were"))
            + " left out.");
    sentences.add(
        runs.isEmpty()
            ? "The readings name no runs; they count as one run."
            : "Runs: " + String.join(", ", runs) + ".");
    sentences.add(
        operators.isEmpty()
            ? "The readings name no operators."
            : "Operators: " + String.join(", ", operators) + ".");
    return sentences;
  }

  private static List<Strip> strips(Analysis analysis, Units units) {
    List<Strip> strips = new ArrayList<>();
    List<JFreeChart> charts = ReadingsStrip.all(analysis);
    for (int i = 0; i < charts.size(); i++) {
      BlockResponse block = analysis.blocks().get(i);
      String id = block.block().id();
      String description =
          "Deviations of "
              + block.count()
              + " readings from their mean of "
              + units.ofResponse(Figures.significant(block.mean(), 5))
              + ", standard deviation "
              + units.ofResponse(Figures.significant(block.standardDeviation(), 2))
              + ".";
      ChartSvg svg =
          new ChartSvg(
              "strip" + (i + 1), "Readings on block " + id, description, STRIP_WIDTH, STRIP_HEIGHT);
      strips.add(new Strip(id, caption(block, units), Markup.of(svg.of(charts.get(i)))));
    }
    return strips;
  }

  private static String caption(BlockResponse block, Units units) {
    boolean counts = block.role() == BlockRole.FIT || block.role() == BlockRole.CHECK;
    String role = block.role() == BlockRole.FIT ? "" : block.role().id() + ", ";
    String value =
        Figures.value(block.certificate().certified(), block.certificate().expandedUncertainty());
    return role + (counts ? units.ofHardness(value) + ", " : "") + "n = " + block.count();
  }

  private static List<ExclusionRow> exclusions(Analysis analysis) {
    Campaign campaign = analysis.campaign();
    List<ExclusionRow> rows = new ArrayList<>();
    for (Exclusion exclusion : campaign.exclusions()) {
      Optional<Reading> reading =
          campaign.readings().stream().filter(exclusion::covers).findFirst();
      double response =
          reading
              .map(r -> r.response(campaign.dossier().identity().zeroFrequencyHz()))
              .orElse(Double.NaN);
      rows.add(
          new ExclusionRow(
              reading.map(Reading::block).orElse("–"),
              exclusion.file() + ", line " + exclusion.line(),
              reading.map(ReadingsSection::taken).orElse("no such reading in this campaign"),
              Figures.significant(response, 5),
              reading.map(r -> difference(r.block(), response, analysis)).orElse("–"),
              exclusion.by(),
              exclusion.at().atOffset(ZoneOffset.UTC).toLocalDate().toString(),
              exclusion.reason()));
    }
    return rows;
  }

  private static String taken(Reading reading) {
    List<String> parts = new ArrayList<>();
    reading.run().ifPresent(parts::add);
    reading.operator().ifPresent(parts::add);
    return parts.isEmpty() ? "–" : String.join(", ", parts);
  }

  private static String difference(String id, double response, Analysis analysis) {
    for (BlockResponse block : analysis.blocks()) {
      if (block.block().id().equals(id)) {
        double share = (response - block.mean()) / Math.abs(block.mean());
        return (share > 0 ? "+" : "") + Figures.fixed(100 * share, 1) + Figures.NBSP + "%";
      }
    }
    return "–";
  }
}
