package fettle.report;

import fettle.calibration.ChosenCurve;
import fettle.curve.Curve;
import fettle.curve.CurveEvaluator;
import fettle.curve.HardnessEstimate;
import fettle.curve.ValidRange;
import fettle.policy.ErrorLimits;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where the curve is valid and what ends it there. */
final class RangeSection {
  private RangeSection() {}

  /**
   * What the template shows.
   *
   * @param statement validity in one sentence
   * @param responseHeading heading of the column of responses
   * @param hardnessHeading heading of the column of hardnesses
   * @param hasTarget whether the policy states a target
   * @param rows both ends and the middle
   */
  public record View(
      String statement,
      String responseHeading,
      String hardnessHeading,
      boolean hasTarget,
      List<Row> rows) {}

  /**
   * One response.
   *
   * @param place which
   * @param response response
   * @param hardness hardness with the curve's own expanded uncertainty
   * @param simultaneous expanded uncertainty of the whole curve there
   * @param target target there
   * @param limitedBy what ends the range there
   */
  public record Row(
      String place,
      String response,
      String hardness,
      String simultaneous,
      String target,
      String limitedBy) {}

  static View of(ReportContent content, ChosenCurve chosen) {
    Units units = Units.of(content.analysis().campaign().dossier().identity());
    Optional<ErrorLimits> target =
        content.analysis().campaign().dossier().policy().targetUncertainty();
    Curve curve = chosen.curve();
    ValidRange range = curve.range();
    CurveEvaluator evaluator = curve.evaluator();
    double middle = 0.5 * (range.responseLow() + range.responseHigh());
    List<Row> rows = new ArrayList<>();
    rows.add(
        row("low response", range.responseLow(), range, evaluator, target, range.lowLimitedBy()));
    rows.add(row("middle", middle, range, evaluator, target, ""));
    rows.add(
        row(
            "high response",
            range.responseHigh(),
            range,
            evaluator,
            target,
            range.highLimitedBy()));
    String statement =
        "Valid for responses from "
            + units.ofResponse(response(range.responseLow(), range, true))
            + " to "
            + units.ofResponse(response(range.responseHigh(), range, false))
            + ", that is for hardnesses from "
            + hardnessSpan(range, evaluator, units)
            + ". Outside this range the curve gives no number.";
    return new View(
        statement,
        units.responseHeading("Response"),
        units.hardnessHeading("Hardness"),
        target.isPresent(),
        rows);
  }

  private static Row row(
      String place,
      double r,
      ValidRange range,
      CurveEvaluator evaluator,
      Optional<ErrorLimits> target,
      String limitedBy) {
    HardnessEstimate estimate = evaluator.curveAt(r);
    double half = evaluator.simultaneousHalfWidth(r);
    return new Row(
        place,
        response(r, range, r < 0.5 * (range.responseLow() + range.responseHigh())),
        Figures.pair(estimate.hardness(), estimate.expandedUncertainty()),
        Figures.uncertainty(half),
        target.map(limits -> Figures.uncertainty(limits.at(estimate.hardness()))).orElse(""),
        limitedBy);
  }

  /** Hardness range, rounded to the places that the uncertainty at its ends supports. */
  static String hardnessSpan(ValidRange range, CurveEvaluator evaluator, Units units) {
    double atLow = evaluator.curveAt(range.responseLow()).expandedUncertainty();
    double atHigh = evaluator.curveAt(range.responseHigh()).expandedUncertainty();
    boolean rising =
        evaluator.hardness(range.responseHigh()) > evaluator.hardness(range.responseLow());
    return Figures.value(range.hardnessLow(), rising ? atLow : atHigh)
        + " to "
        + units.ofHardness(Figures.value(range.hardnessHigh(), rising ? atHigh : atLow));
  }

  /** An end of the range, rounded towards its inside to a thousandth of its length or finer. */
  static String response(double r, ValidRange range, boolean up) {
    double step = (range.responseHigh() - range.responseLow()) / 1000;
    int decimals = Math.max(0, (int) Math.ceil(-Math.log10(step)));
    RoundingMode mode = up ? RoundingMode.CEILING : RoundingMode.FLOOR;
    return Figures.fixed(BigDecimal.valueOf(r).setScale(decimals, mode).doubleValue(), decimals);
  }
}
