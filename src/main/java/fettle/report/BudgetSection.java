package fettle.report;

import fettle.calibration.Analysis;
import fettle.calibration.ChosenCurve;
import fettle.curve.BudgetLine;
import fettle.curve.CurveEvaluator;
import fettle.curve.HardnessEstimate;
import fettle.curve.ValidRange;
import fettle.quantity.UncertaintyRounding;
import freemarker.template.TemplateModel;
import java.util.ArrayList;
import java.util.List;

/** The uncertainty budget of a result at three places of the range, and along it. */
final class BudgetSection {
  /** Readings that make up a result in the budget; five on one place are common practice. */
  static final int READINGS = 5;

  private static final int HEIGHT = 360;

  private BudgetSection() {}

  /**
   * What the template shows.
   *
   * @param readings number of readings that the result is the mean of
   * @param places headings of the three columns
   * @param lines lines
   * @param totals lines below
   * @param absent names of the lines of which nothing is known
   * @param chart shares along the range
   * @param unit the scale's symbol
   */
  public record View(
      String readings,
      List<String> places,
      List<Line> lines,
      List<Line> totals,
      List<String> absent,
      TemplateModel chart,
      String unit) {}

  /**
   * One line.
   *
   * @param name what it is
   * @param part where it arises
   * @param figures figures at the three places
   * @param present false where nothing is known of it
   */
  public record Line(String name, String part, List<String> figures, boolean present) {}

  static View of(ReportContent content, ChosenCurve chosen) {
    Analysis analysis = content.analysis();
    Units units = Units.of(analysis.campaign().dossier().identity());
    CurveEvaluator evaluator = chosen.curve().evaluator();
    double[] places = places(chosen.curve().range(), evaluator);
    List<HardnessEstimate> results = new ArrayList<>();
    List<HardnessEstimate> curve = new ArrayList<>();
    List<List<BudgetLine>> budgets = new ArrayList<>();
    List<String> headings = new ArrayList<>();
    for (double r : places) {
      HardnessEstimate result = evaluator.resultAt(r, READINGS, Double.NaN);
      results.add(result);
      curve.add(evaluator.curveAt(r));
      budgets.add(evaluator.budget(r, READINGS, Double.NaN));
      headings.add(
          units.ofHardness(Figures.value(result.hardness(), result.expandedUncertainty())));
    }
    List<Line> lines = lines(budgets, results);
    List<String> absent = lines.stream().filter(line -> !line.present()).map(Line::name).toList();
    ChartSvg svg =
        new ChartSvg(
            "budget",
            "Uncertainty budget over the range",
            "Shares of the squared standard uncertainty of a result, stacked to 100 %.",
            CurveSection.WIDTH,
            HEIGHT);
    return new View(
        Integer.toString(READINGS),
        headings,
        lines,
        totals(curve, results, units, content),
        absent,
        Markup.of(svg.of(BudgetChart.of(analysis, READINGS))),
        units.hardness());
  }

  /** Responses at the low, middle and high hardness of the range. */
  private static double[] places(ValidRange range, CurveEvaluator evaluator) {
    double low = range.responseLow();
    double high = range.responseHigh();
    double middle = 0.5 * (low + high);
    boolean rising = evaluator.hardness(high) > evaluator.hardness(low);
    return rising ? new double[] {low, middle, high} : new double[] {high, middle, low};
  }

  private static List<Line> lines(List<List<BudgetLine>> budgets, List<HardnessEstimate> results) {
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < budgets.get(0).size(); i++) {
      BudgetLine first = budgets.get(0).get(i);
      List<String> figures = new ArrayList<>();
      for (int k = 0; k < budgets.size(); k++) {
        double u = budgets.get(k).get(i).standardUncertainty();
        figures.add(Figures.fixed(u, decimals(results.get(k))));
      }
      String part = first.part() == BudgetLine.Part.CURVE ? "curve" : "result";
      lines.add(new Line(first.source(), part, figures, first.present()));
    }
    return lines;
  }

  /** One place more than the expanded uncertainty, so that the lines can be added up again. */
  private static int decimals(HardnessEstimate result) {
    double expanded = result.expandedUncertainty();
    return expanded > 0
        ? Math.max(0, UncertaintyRounding.of(0, expanded).expandedUncertainty().scale() + 1)
        : 3;
  }

  private static List<Line> totals(
      List<HardnessEstimate> curve,
      List<HardnessEstimate> results,
      Units units,
      ReportContent content) {
    List<String> ofCurve = new ArrayList<>();
    List<String> ofResult = new ArrayList<>();
    List<String> factors = new ArrayList<>();
    List<String> expanded = new ArrayList<>();
    List<String> relative = new ArrayList<>();
    List<String> curveExpanded = new ArrayList<>();
    for (int k = 0; k < results.size(); k++) {
      HardnessEstimate result = results.get(k);
      int decimals = decimals(result);
      ofCurve.add(Figures.fixed(curve.get(k).standardUncertainty(), decimals));
      ofResult.add(Figures.fixed(result.standardUncertainty(), decimals));
      factors.add(Figures.fixed(result.coverageFactor(), 2));
      expanded.add(Figures.uncertainty(result.expandedUncertainty()));
      relative.add(Figures.percent(result.expandedUncertainty() / Math.abs(result.hardness())));
      curveExpanded.add(Figures.uncertainty(curve.get(k).expandedUncertainty()));
    }
    List<Line> totals = new ArrayList<>();
    totals.add(new Line("Standard uncertainty u of the curve", "curve", ofCurve, true));
    totals.add(new Line("Expanded uncertainty U of the curve, 95 %", "curve", curveExpanded, true));
    totals.add(new Line("Standard uncertainty u of the result", "result", ofResult, true));
    totals.add(new Line("Coverage factor k for 95 %", "result", factors, true));
    totals.add(new Line("Expanded uncertainty U of the result", "result", expanded, true));
    if (!units.ordinal()) {
      totals.add(new Line("The same in % of the hardness", "result", relative, true));
    }
    return totals;
  }
}
