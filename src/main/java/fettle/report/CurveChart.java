package fettle.report;

import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.curve.Curve;
import fettle.curve.CurveEvaluator;
import fettle.curve.HardnessEstimate;
import fettle.curve.ValidRange;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYSeries;

/**
 * Hardness against response: the curve over its valid range with both 95 % bands, the blocks with
 * expanded uncertainties in both directions. Without a chosen curve, the blocks alone.
 */
public final class CurveChart {
  private static final int STEPS = 120;

  private CurveChart() {}

  /**
   * The chart.
   *
   * @param analysis blocks and, where there is one, the chosen curve
   * @return a new chart
   */
  public static JFreeChart of(Analysis analysis) {
    ChartPoints points = points(analysis);
    List<LegendItem> legend = new ArrayList<>(points.keys());
    NumberAxis hardness = hardnessAxis(analysis);
    XYPlot plot = ChartStyle.plot(ResponseSpan.of(analysis).axis(analysis), hardness);
    ChartStyle.alignLeft(plot);
    if (analysis.chosen().isPresent()) {
      draw(plot, analysis.chosen().get().curve(), legend);
    }
    points.drawOn(plot);
    String scale = analysis.campaign().dossier().identity().scale().symbol();
    return ChartStyle.chart(plot, "Hardness / " + scale, legend);
  }

  private static void draw(XYPlot plot, Curve curve, List<LegendItem> legend) {
    CurveEvaluator evaluator = curve.evaluator();
    ValidRange range = curve.range();
    CurveBand band = new CurveBand();
    XYSeries line = new XYSeries("curve");
    for (int k = 0; k <= STEPS; k++) {
      double r = range.responseLow() + (range.responseHigh() - range.responseLow()) * k / STEPS;
      HardnessEstimate estimate = evaluator.curveAt(r);
      double pointwise = estimate.expandedUncertainty();
      band.add(r, estimate.hardness(), pointwise, pointwise * curve.simultaneousFactor());
      line.add(r, estimate.hardness());
    }
    band.drawOn(plot);
    CurveBand.line(plot, line, ChartStyle.line(1.6), ChartStyle.CURVE);
    markRange(plot, range);
    legend.add(ChartStyle.lineKey("curve", ChartStyle.line(1.6), ChartStyle.CURVE));
    legend.add(CurveBand.pointwiseKey());
    legend.add(CurveBand.simultaneousKey());
  }

  /** Where the range ends, the curve says nothing. */
  static void markRange(XYPlot plot, ValidRange range) {
    for (double end : new double[] {range.responseLow(), range.responseHigh()}) {
      plot.addDomainMarker(new ValueMarker(end, ChartStyle.MUTED, ChartStyle.dotted(1.1)));
    }
  }

  private static ChartPoints points(Analysis analysis) {
    ChartPoints points = new ChartPoints();
    List<BlockResponse> fitting = analysis.fittingBlocks();
    for (int i = 0; i < fitting.size(); i++) {
      double xHalf = 2 * Math.sqrt(analysis.points().totalResponseVariance(i));
      BlockResponse block = fitting.get(i);
      points.addFit(block.mean(), xHalf, certified(block), expanded(block));
    }
    for (BlockResponse block : ChartPoints.checkBlocks(analysis)) {
      double xHalf = ChartPoints.halfWidthOfMean(block, analysis.variance());
      points.addCheck(block.mean(), xHalf, certified(block), expanded(block));
    }
    return points;
  }

  private static double certified(BlockResponse block) {
    return block.certificate().certified();
  }

  private static double expanded(BlockResponse block) {
    return block.certificate().expandedUncertainty();
  }

  private static NumberAxis hardnessAxis(Analysis analysis) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    List<BlockResponse> shown = new ArrayList<>(analysis.fittingBlocks());
    shown.addAll(ChartPoints.checkBlocks(analysis));
    for (BlockResponse block : shown) {
      low = Math.min(low, certified(block) - expanded(block));
      high = Math.max(high, certified(block) + expanded(block));
    }
    if (analysis.chosen().isPresent()) {
      Curve curve = analysis.chosen().get().curve();
      CurveEvaluator evaluator = curve.evaluator();
      for (double r : new double[] {curve.range().responseLow(), curve.range().responseHigh()}) {
        double half = evaluator.simultaneousHalfWidth(r);
        low = Math.min(low, evaluator.hardness(r) - half);
        high = Math.max(high, evaluator.hardness(r) + half);
      }
    }
    double margin = 0.05 * (high - low);
    return ChartStyle.axis(low - margin, high + margin);
  }
}
