package fettle.report;

import fettle.calibration.Analysis;
import fettle.curve.BudgetLine;
import fettle.curve.Curve;
import fettle.curve.CurveEvaluator;
import fettle.curve.ValidRange;
import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/**
 * Shares of the squared standard uncertainty of a result over the valid range, stacked to 100 %.
 * The largest lines stand by themselves, the small ones together; each area carries its number.
 */
public final class BudgetChart {
  private static final int STEPS = 80;

  /** Largest share in percent below which a line joins the others. */
  private static final double SMALL = 2;

  /** Share in percent from which an area has room for its number. */
  private static final double ROOM = 7;

  private BudgetChart() {}

  /** One area: its name and its share at every step, in percent. */
  private record Share(String name, double[] percent) {
    double largest() {
      double largest = 0;
      for (double share : percent) {
        largest = Math.max(largest, share);
      }
      return largest;
    }
  }

  /**
   * The chart.
   *
   * @param analysis an analysis with a chosen curve
   * @param readings number of readings that make up the result, at least 1
   * @return a new chart
   * @throws IllegalArgumentException if no curve is chosen
   */
  public static JFreeChart of(Analysis analysis, int readings) {
    Curve curve =
        analysis
            .chosen()
            .orElseThrow(() -> new IllegalArgumentException("analysis: a chosen curve is expected"))
            .curve();
    List<Share> shares = grouped(shares(curve, readings));
    ValidRange range = curve.range();
    YIntervalSeriesCollection areas = new YIntervalSeriesCollection();
    DeviationRenderer renderer = new DeviationRenderer(false, false);
    renderer.setAlpha(1f);
    List<XYSeries> borders = new ArrayList<>();
    NumberAxis percent = ChartStyle.axis(0, 100);
    XYPlot plot = ChartStyle.plot(axis(analysis, range), percent);
    ChartStyle.alignLeft(plot);
    List<LegendItem> legend = new ArrayList<>();
    double[] base = new double[STEPS + 1];
    for (int s = 0; s < shares.size(); s++) {
      Share share = shares.get(s);
      YIntervalSeries area = new YIntervalSeries(s);
      XYSeries border = new XYSeries(s);
      for (int k = 0; k <= STEPS; k++) {
        double r = responseAt(range, k);
        double top = base[k] + share.percent()[k];
        area.add(r, top, base[k], top);
        border.add(r, base[k]);
      }
      areas.addSeries(area);
      borders.add(border);
      Color colour = ChartStyle.share(s, shares.size());
      renderer.setSeriesPaint(s, colour);
      renderer.setSeriesFillPaint(s, colour);
      number(plot, range, share, s, shares.size(), base);
      legend.add(ChartStyle.areaKey((s + 1) + "  " + share.name(), colour));
      for (int k = 0; k <= STEPS; k++) {
        base[k] += share.percent()[k];
      }
    }
    plot.setDataset(areas);
    plot.setRenderer(renderer);
    for (XYSeries border : borders.subList(Math.min(1, borders.size()), borders.size())) {
      CurveBand.line(plot, border, ChartStyle.line(1), ChartStyle.PAPER);
    }
    return ChartStyle.chart(plot, "Share of u² of the result / %", legend);
  }

  private static NumberAxis axis(Analysis analysis, ValidRange range) {
    NumberAxis axis = ChartStyle.axis(range.responseLow(), range.responseHigh());
    axis.setLabel(analysis.campaign().dossier().identity().responseKind().axisLabel());
    return axis;
  }

  private static double responseAt(ValidRange range, int step) {
    return range.responseLow() + (range.responseHigh() - range.responseLow()) * step / STEPS;
  }

  private static List<Share> shares(Curve curve, int readings) {
    CurveEvaluator evaluator = curve.evaluator();
    List<Share> shares = new ArrayList<>();
    for (int k = 0; k <= STEPS; k++) {
      List<BudgetLine> lines = evaluator.budget(responseAt(curve.range(), k), readings, Double.NaN);
      double total = 0;
      for (BudgetLine line : lines) {
        total += line.standardUncertainty() * line.standardUncertainty();
      }
      for (int i = 0; i < lines.size(); i++) {
        BudgetLine line = lines.get(i);
        if (k == 0) {
          shares.add(new Share(line.source(), new double[STEPS + 1]));
        }
        double square = line.standardUncertainty() * line.standardUncertainty();
        shares.get(i).percent()[k] = total > 0 ? 100 * square / total : 0;
      }
    }
    return shares;
  }

  /** The largest by themselves in the order of the budget, the rest as one. */
  private static List<Share> grouped(List<Share> shares) {
    double threshold = SMALL;
    List<Double> sizes =
        shares.stream().map(Share::largest).sorted((a, b) -> Double.compare(b, a)).toList();
    int most = ChartStyle.shares() - 1;
    if (sizes.size() > most) {
      threshold = Math.max(threshold, Math.nextUp(sizes.get(most)));
    }
    List<Share> kept = new ArrayList<>();
    Share rest = new Share("all other lines", new double[STEPS + 1]);
    for (Share share : shares) {
      if (share.largest() >= threshold) {
        kept.add(share);
      } else {
        for (int k = 0; k <= STEPS; k++) {
          rest.percent()[k] += share.percent()[k];
        }
      }
    }
    if (rest.largest() > 0) {
      kept.add(rest);
    }
    return kept;
  }

  private static void number(
      XYPlot plot, ValidRange range, Share share, int index, int of, double[] base) {
    int widest = STEPS / 2;
    for (int k = STEPS / 20; k <= STEPS - STEPS / 20; k++) {
      if (share.percent()[k] > share.percent()[widest] + 1) {
        widest = k;
      }
    }
    if (share.percent()[widest] < ROOM) {
      return;
    }
    XYTextAnnotation text =
        new XYTextAnnotation(
            Integer.toString(index + 1),
            responseAt(range, widest),
            base[widest] + share.percent()[widest] / 2);
    text.setFont(ChartStyle.font());
    text.setPaint(ChartStyle.textOnShare(index, of));
    text.setTextAnchor(TextAnchor.CENTER);
    plot.addAnnotation(text);
  }
}
