package fettle.report;

import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.calibration.Campaign;
import fettle.reading.Reading;
import java.awt.Color;
import java.awt.Shape;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * The readings of one block in their order, run by run, as deviations from the block's mean: one
 * shape an operator, a bar at each run's mean, crosses for what was left out. All strips of a
 * campaign share one vertical scale; a cross beyond it stands at its edge.
 */
public final class ReadingsStrip {
  private static final double GAP = 1.2;
  private static final double POINT = 4.6;

  private final Analysis analysis;
  private final boolean relative;
  private final List<String> operators;
  private final double halfSpan;

  private ReadingsStrip(Analysis analysis) {
    this.analysis = analysis;
    this.relative = analysis.variance().relative();
    this.operators = operators(analysis.campaign());
    this.halfSpan = halfSpan();
  }

  /**
   * The strip of one block.
   *
   * @param analysis the analysis whose strips share a scale
   * @param block one of its blocks
   * @return a new chart without legend
   */
  public static JFreeChart of(Analysis analysis, BlockResponse block) {
    return new ReadingsStrip(analysis).strip(block);
  }

  /** Strips of all blocks in the order of the analysis. */
  static List<JFreeChart> all(Analysis analysis) {
    ReadingsStrip strips = new ReadingsStrip(analysis);
    return analysis.blocks().stream().map(strips::strip).toList();
  }

  /** Operators in order of name; their shapes follow this order. */
  static List<String> operators(Campaign campaign) {
    TreeSet<String> names = new TreeSet<>();
    campaign.readings().forEach(reading -> reading.operator().ifPresent(names::add));
    return List.copyOf(names);
  }

  private double halfSpan() {
    double largest = 0;
    for (BlockResponse block : analysis.blocks()) {
      for (double response : block.responses()) {
        largest = Math.max(largest, Math.abs(deviation(response, block)));
      }
    }
    return largest > 0 ? 1.2 * largest : 1;
  }

  private double deviation(double response, BlockResponse block) {
    double difference = response - block.mean();
    return relative ? 100 * difference / Math.abs(block.mean()) : difference;
  }

  private JFreeChart strip(BlockResponse block) {
    NumberAxis range = ChartStyle.axis(-halfSpan, halfSpan);
    range.setTickLabelFont(ChartStyle.smallFont());
    range.setAxisLineVisible(false);
    range.setTickMarksVisible(false);
    Map<String, List<Reading>> runs = byRun(block);
    double end = 0;
    for (List<Reading> readings : runs.values()) {
      end += readings.size() + GAP;
    }
    NumberAxis domain = ChartStyle.axis(-0.9, Math.max(1, end - GAP));
    domain.setTickLabelsVisible(false);
    domain.setTickMarksVisible(false);
    domain.setAxisLineVisible(false);
    XYPlot plot = ChartStyle.plot(domain, range);
    draw(plot, block, runs);
    return ChartStyle.chart(plot, "", List.of());
  }

  private Map<String, List<Reading>> byRun(BlockResponse block) {
    List<Reading> readings = new ArrayList<>();
    for (Reading reading : analysis.campaign().readings()) {
      if (reading.block().equals(block.block().id())) {
        readings.add(reading);
      }
    }
    if (readings.stream().allMatch(reading -> reading.takenAt().isPresent())) {
      readings.sort((a, b) -> a.takenAt().get().compareTo(b.takenAt().get()));
    }
    Map<String, List<Reading>> runs = new LinkedHashMap<>();
    for (Reading reading : readings) {
      runs.computeIfAbsent(reading.run().orElse(""), run -> new ArrayList<>()).add(reading);
    }
    return runs;
  }

  private void draw(XYPlot plot, BlockResponse block, Map<String, List<Reading>> runs) {
    XYSeriesCollection points = new XYSeriesCollection();
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
    renderer.setUseFillPaint(true);
    renderer.setDefaultOutlineStroke(ChartStyle.line(1));
    renderer.setUseOutlinePaint(true);
    renderer.setDrawOutlines(true);
    for (int k = 0; k <= operators.size(); k++) {
      points.addSeries(new XYSeries(k, true, true));
      renderer.setSeriesShape(k, shape(k));
      paint(renderer, k, ChartStyle.FIT, k % 2 == 1 ? ChartStyle.PAPER : ChartStyle.FIT);
    }
    int excluded = operators.size() + 1;
    points.addSeries(new XYSeries(excluded, true, true));
    renderer.setSeriesShape(excluded, ChartStyle.cross(6));
    paint(renderer, excluded, ChartStyle.CHECK, ChartStyle.CHECK);
    double x = 0;
    for (List<Reading> readings : runs.values()) {
      double first = x;
      double sum = 0;
      int kept = 0;
      for (Reading reading : readings) {
        double response =
            reading.response(analysis.campaign().dossier().identity().zeroFrequencyHz());
        double y = deviation(response, block);
        if (analysis.campaign().isExcluded(reading)) {
          double edge = 0.93 * halfSpan;
          points.getSeries(excluded).add(x, Math.max(-edge, Math.min(edge, y)));
        } else {
          int operator = reading.operator().map(operators::indexOf).orElse(operators.size());
          points.getSeries(operator).add(x, y);
          sum += y;
          kept++;
        }
        x += 1;
      }
      if (kept > 0) {
        XYSeries mean = new XYSeries("mean");
        mean.add(first - 0.4, sum / kept);
        mean.add(x - 0.6, sum / kept);
        CurveBand.line(plot, mean, ChartStyle.line(1.4), ChartStyle.CURVE);
      }
      x += GAP;
    }
    int index = plot.getDatasetCount();
    plot.setDataset(index, points);
    plot.setRenderer(index, renderer);
  }

  private static void paint(
      XYLineAndShapeRenderer renderer, int series, Color outline, Color fill) {
    renderer.setSeriesPaint(series, outline);
    renderer.setSeriesOutlinePaint(series, outline);
    renderer.setSeriesFillPaint(series, fill);
  }

  private static Shape shape(int operator) {
    return operator % 4 < 2 ? ChartStyle.circle(POINT) : ChartStyle.triangle(POINT + 1);
  }

  /** The mark of an operator in words, for the caption. */
  static String mark(int operator) {
    return switch (operator % 4) {
      case 0 -> "filled disc";
      case 1 -> "ring";
      case 2 -> "filled triangle";
      default -> "hollow triangle";
    };
  }
}
