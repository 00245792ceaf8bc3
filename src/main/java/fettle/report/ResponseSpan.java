package fettle.report;

import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.curve.ValidRange;
import fettle.fit.Points;
import org.jfree.chart.axis.NumberAxis;

/** The stretch of responses that all charts of one analysis share. */
record ResponseSpan(double low, double high) {
  private static final double MARGIN = 0.04;

  static ResponseSpan of(Analysis analysis) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    Points points = analysis.points();
    for (int i = 0; i < points.size(); i++) {
      double half = 2 * Math.sqrt(points.totalResponseVariance(i));
      low = Math.min(low, points.response(i) - half);
      high = Math.max(high, points.response(i) + half);
    }
    for (BlockResponse block : ChartPoints.checkBlocks(analysis)) {
      low = Math.min(low, block.mean());
      high = Math.max(high, block.mean());
    }
    if (analysis.chosen().isPresent()) {
      ValidRange range = analysis.chosen().get().curve().range();
      low = Math.min(low, range.responseLow());
      high = Math.max(high, range.responseHigh());
    }
    double margin = MARGIN * (high - low);
    return new ResponseSpan(low - margin, high + margin);
  }

  NumberAxis axis(Analysis analysis) {
    NumberAxis axis = ChartStyle.axis(low, high);
    axis.setLabel(analysis.campaign().dossier().identity().responseKind().axisLabel());
    return axis;
  }
}
