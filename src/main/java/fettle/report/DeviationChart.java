package fettle.report;

import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.calibration.CheckBlockResult;
import fettle.calibration.ChosenCurve;
import fettle.curve.CurveEvaluator;
import fettle.curve.HardnessEstimate;
import fettle.curve.ValidRange;
import fettle.fit.CurveFit;
import fettle.fit.Points;
import fettle.policy.ErrorLimits;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYSeries;

/**
 * Deviation fitted − hardness of every block against response, on the axis of {@link CurveChart}:
 * in percent of the hardness, on ordinal scales in their own units; with the curve's bands about
 * zero and, where the policy states them, the permissible errors.
 */
public final class DeviationChart {
  private static final int STEPS = 120;

  private final Analysis analysis;
  private final ChosenCurve chosen;
  private final CurveEvaluator evaluator;
  private final boolean relative;
  private final CurveBand band = new CurveBand();
  private final ChartPoints points = new ChartPoints();
  private final XYSeries upper = new XYSeries("upper limit");
  private final XYSeries lower = new XYSeries("lower limit");

  /** Never 0, so that the axis has a length. */
  private double largest = Double.MIN_NORMAL;

  private DeviationChart(Analysis analysis, ChosenCurve chosen) {
    this.analysis = analysis;
    this.chosen = chosen;
    this.evaluator = chosen.curve().evaluator();
    this.relative = !analysis.campaign().dossier().identity().scale().isOrdinal();
  }

  /**
   * The chart.
   *
   * @param analysis an analysis with a chosen curve
   * @return a new chart
   * @throws IllegalArgumentException if no curve is chosen
   */
  public static JFreeChart of(Analysis analysis) {
    ChosenCurve chosen =
        analysis
            .chosen()
            .orElseThrow(
                () -> new IllegalArgumentException("analysis: a chosen curve is expected"));
    return new DeviationChart(analysis, chosen).chart();
  }

  private JFreeChart chart() {
    addBand();
    addFittingBlocks();
    addCheckBlocks();
    double end = 1.08 * largest;
    NumberAxis axis = ChartStyle.axis(-end, end);
    XYPlot plot = ChartStyle.plot(ResponseSpan.of(analysis).axis(analysis), axis);
    ChartStyle.alignLeft(plot);
    List<LegendItem> legend = new ArrayList<>(points.keys());
    band.drawOn(plot);
    XYSeries zero = new XYSeries("zero");
    zero.add(chosen.curve().range().responseLow(), 0);
    zero.add(chosen.curve().range().responseHigh(), 0);
    CurveBand.line(plot, zero, ChartStyle.line(1.2), ChartStyle.CURVE);
    CurveChart.markRange(plot, chosen.curve().range());
    legend.add(CurveBand.pointwiseKey());
    legend.add(CurveBand.simultaneousKey());
    if (!upper.isEmpty()) {
      CurveBand.line(plot, upper, ChartStyle.dashed(1.4), ChartStyle.LIMIT);
      CurveBand.line(plot, lower, ChartStyle.dashed(1.4), ChartStyle.LIMIT);
      legend.add(ChartStyle.lineKey("permissible error", ChartStyle.dashed(1.4), ChartStyle.LIMIT));
    }
    points.drawOn(plot);
    String unit = relative ? "%" : analysis.campaign().dossier().identity().scale().symbol();
    return ChartStyle.chart(plot, "Fitted − certified / " + unit, legend);
  }

  private void addBand() {
    Optional<ErrorLimits> limits = analysis.campaign().dossier().policy().permissibleError();
    ValidRange range = chosen.curve().range();
    for (int k = 0; k <= STEPS; k++) {
      double r = range.responseLow() + (range.responseHigh() - range.responseLow()) * k / STEPS;
      HardnessEstimate estimate = evaluator.curveAt(r);
      double unit = unitAt(estimate.hardness());
      double half = estimate.expandedUncertainty() / unit;
      double wide = half * chosen.curve().simultaneousFactor();
      band.add(r, 0, half, wide);
      largest = Math.max(largest, wide);
      if (limits.isPresent()) {
        double limit = limits.get().at(estimate.hardness()) / unit;
        upper.add(r, limit);
        lower.add(r, -limit);
        largest = Math.max(largest, limit);
      }
    }
  }

  /** What one step of the vertical axis is, in the scale's unit. */
  private double unitAt(double hardness) {
    return relative ? Math.abs(hardness) / 100 : 1;
  }

  private void addFittingBlocks() {
    CurveFit fit = chosen.fit().chosen();
    Points all = analysis.points();
    List<BlockResponse> fitting = analysis.fittingBlocks();
    for (int i = 0; i < fitting.size(); i++) {
      double certified = fitting.get(i).certificate().certified();
      double unit = unitAt(certified);
      double deviation = (fit.fitted()[i] - certified) / unit;
      double slope = fit.slopes()[i];
      double half =
          2
              * Math.sqrt(
                  all.totalHardnessVariance(i) + slope * slope * all.totalResponseVariance(i))
              / unit;
      points.addFit(fitting.get(i).mean(), 0, deviation, half);
      largest = Math.max(largest, Math.abs(deviation) + half);
    }
  }

  private void addCheckBlocks() {
    for (CheckBlockResult result : chosen.checkBlocks()) {
      double unit = unitAt(result.block().certificate().certified());
      double deviation = result.deviation() / unit;
      double half = result.expandedUncertainty() / unit;
      if (!Double.isFinite(deviation + half)) {
        continue;
      }
      points.addCheck(result.block().mean(), 0, deviation, half);
      largest = Math.max(largest, Math.abs(deviation) + half);
    }
  }
}
