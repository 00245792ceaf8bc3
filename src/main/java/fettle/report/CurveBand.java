package fettle.report;

import java.awt.Color;
import java.awt.Stroke;
import org.jfree.chart.LegendItem;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/**
 * Bands and lines along the response, drawn in opaque colours so that every renderer shows them.
 */
final class CurveBand {
  private final YIntervalSeriesCollection bands = new YIntervalSeriesCollection();
  private final YIntervalSeries simultaneous = new YIntervalSeries("simultaneous");
  private final YIntervalSeries pointwise = new YIntervalSeries("pointwise");

  CurveBand() {
    bands.addSeries(simultaneous);
    bands.addSeries(pointwise);
  }

  void add(double x, double y, double pointwiseHalf, double simultaneousHalf) {
    simultaneous.add(x, y, y - simultaneousHalf, y + simultaneousHalf);
    pointwise.add(x, y, y - pointwiseHalf, y + pointwiseHalf);
  }

  void drawOn(XYPlot plot) {
    DeviationRenderer renderer = new DeviationRenderer(false, false);
    renderer.setAlpha(1f);
    fill(renderer, 0, ChartStyle.WIDE_BAND);
    fill(renderer, 1, ChartStyle.BAND);
    int index = plot.getDatasetCount();
    plot.setDataset(index, bands);
    plot.setRenderer(index, renderer);
  }

  private static void fill(DeviationRenderer renderer, int series, Color colour) {
    renderer.setSeriesPaint(series, colour);
    renderer.setSeriesFillPaint(series, colour);
  }

  /** Draws a line of its own over what the plot has. */
  static void line(XYPlot plot, XYSeries series, Stroke stroke, Color colour) {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setDrawSeriesLineAsPath(true);
    renderer.setSeriesPaint(0, colour);
    renderer.setSeriesStroke(0, stroke);
    int index = plot.getDatasetCount();
    plot.setDataset(index, new XYSeriesCollection(series));
    plot.setRenderer(index, renderer);
  }

  static LegendItem pointwiseKey() {
    return ChartStyle.areaKey("95 %, one response", ChartStyle.BAND);
  }

  static LegendItem simultaneousKey() {
    return ChartStyle.areaKey("95 %, whole curve", ChartStyle.WIDE_BAND);
  }
}
