package fettle.report;

import fettle.block.BlockRole;
import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.calibration.ResponseVariance;
import java.util.List;
import org.jfree.chart.LegendItem;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;

/** Blocks as points with error bars: fitting blocks as discs, check blocks as hollow diamonds. */
final class ChartPoints {
  private final XYIntervalSeries fit = new XYIntervalSeries("fitting blocks");
  private final XYIntervalSeries check = new XYIntervalSeries("check blocks");

  /** Check blocks that were read, in order of certified hardness. */
  static List<BlockResponse> checkBlocks(Analysis analysis) {
    return analysis.withRole(BlockRole.CHECK);
  }

  /** Two standard uncertainties of a mean response from its own scatter. */
  static double halfWidthOfMean(BlockResponse block, ResponseVariance variance) {
    double size = variance.relative() ? Math.abs(block.mean()) : 1;
    return 2 * variance.repeatability() * size / Math.sqrt(block.count());
  }

  void addFit(double x, double xHalf, double y, double yHalf) {
    fit.add(x, x - xHalf, x + xHalf, y, y - yHalf, y + yHalf);
  }

  void addCheck(double x, double xHalf, double y, double yHalf) {
    check.add(x, x - xHalf, x + xHalf, y, y - yHalf, y + yHalf);
  }

  /** Draws them over what the plot has. */
  void drawOn(XYPlot plot) {
    XYIntervalSeriesCollection points = new XYIntervalSeriesCollection();
    points.addSeries(fit);
    points.addSeries(check);
    XYErrorRenderer renderer = new XYErrorRenderer();
    renderer.setCapLength(3);
    renderer.setErrorStroke(ChartStyle.line(0.9));
    renderer.setUseFillPaint(true);
    renderer.setDefaultOutlineStroke(ChartStyle.line(1.3));
    renderer.setUseOutlinePaint(true);
    renderer.setDrawOutlines(true);
    renderer.setSeriesPaint(0, ChartStyle.FIT);
    renderer.setSeriesFillPaint(0, ChartStyle.FIT);
    renderer.setSeriesOutlinePaint(0, ChartStyle.FIT);
    renderer.setSeriesShape(0, ChartStyle.circle(6));
    renderer.setSeriesPaint(1, ChartStyle.CHECK);
    renderer.setSeriesFillPaint(1, ChartStyle.PAPER);
    renderer.setSeriesOutlinePaint(1, ChartStyle.CHECK);
    renderer.setSeriesShape(1, ChartStyle.diamond(6.5));
    int index = plot.getDatasetCount();
    plot.setDataset(index, points);
    plot.setRenderer(index, renderer);
  }

  /** Their keys, for those that are there. */
  List<LegendItem> keys() {
    LegendItem fitKey =
        ChartStyle.pointKey("fitting block", ChartStyle.circle(6), ChartStyle.FIT, ChartStyle.FIT);
    LegendItem checkKey =
        ChartStyle.pointKey(
            "check block", ChartStyle.diamond(6.5), ChartStyle.PAPER, ChartStyle.CHECK);
    return check.isEmpty() ? List.of(fitKey) : List.of(fitKey, checkKey);
  }
}
