package fettle.report;

import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.calibration.CandidateFit;
import fettle.calibration.ChosenCurve;
import fettle.curve.CurveIdentity;
import fettle.fit.ModelId;
import fettle.fit.ReportedCoefficients;
import fettle.quantity.ResponseKind;
import fettle.uncertainty.BetweenBlockScatter;
import fettle.uncertainty.PredictedBlock;
import fettle.uncertainty.ScatterScale;
import freemarker.template.TemplateModel;
import java.util.ArrayList;
import java.util.List;

/** The curve: formula, coefficients, charts, and every block predicted by the others. */
final class CurveSection {
  static final int WIDTH = 720;
  private static final int CURVE_HEIGHT = 420;
  private static final int DEVIATION_HEIGHT = 300;

  private CurveSection() {}

  /**
   * What the template shows.
   *
   * @param model name of the model
   * @param formula the formula
   * @param where what its letters stand for
   * @param coefficients coefficients
   * @param curveChart chart of the curve
   * @param deviationChart chart of the deviations
   * @param deviationCaption what its bars are
   * @param predictedHeading heading of predicted values
   * @param certifiedHeading heading of certified values
   * @param errorHeading heading of errors
   * @param uncertaintyHeading heading of their uncertainties
   * @param predicted blocks predicted by the others
   * @param scatter between-block scatter in words
   */
  public record View(
      String model,
      TemplateModel formula,
      String where,
      List<CoefficientRow> coefficients,
      TemplateModel curveChart,
      TemplateModel deviationChart,
      String deviationCaption,
      String predictedHeading,
      String certifiedHeading,
      String errorHeading,
      String uncertaintyHeading,
      List<PredictedRow> predicted,
      List<String> scatter) {}

  /**
   * One coefficient.
   *
   * @param name its letter
   * @param value rounded to its uncertainty
   * @param standardUncertainty standard uncertainty
   * @param full all digits
   */
  public record CoefficientRow(
      TemplateModel name, String value, String standardUncertainty, String full) {}

  /**
   * One block predicted by the others.
   *
   * @param block id
   * @param certified certified value
   * @param predicted predicted value
   * @param error predicted − certified
   * @param standardUncertainty of the error
   * @param z their ratio
   * @param large whether the ratio is beyond 2.5
   * @param remark whether the prediction is an extrapolation
   */
  public record PredictedRow(
      String block,
      String certified,
      String predicted,
      String error,
      String standardUncertainty,
      String z,
      boolean large,
      String remark) {}

  static View of(ReportContent content, ChosenCurve chosen) {
    Analysis analysis = content.analysis();
    CurveIdentity identity = analysis.campaign().dossier().identity();
    Units units = Units.of(identity);
    ModelId model = chosen.curve().model();
    return new View(
        ModelNames.of(model),
        Markup.of(ModelNames.formula(model)),
        where(identity, units),
        coefficients(chosen),
        Markup.of(curveChart(analysis, units)),
        Markup.of(deviationChart(analysis)),
        deviationCaption(units, analysis),
        units.hardnessHeading("Predicted"),
        units.hardnessHeading("Certified"),
        units.hardnessHeading("Error"),
        units.hardnessHeading("u"),
        predicted(analysis, chosen.fit()),
        scatter(chosen, units));
  }

  /** The chart of the blocks and, where there is one, the curve. */
  static String curveChart(Analysis analysis, Units units) {
    String what =
        analysis.chosen().isPresent()
            ? "The calibration curve with its 95 % bands and the blocks, hardness in "
            : "The blocks without a curve, hardness in ";
    return new ChartSvg(
            "curve",
            "Hardness against response",
            what + units.hardness() + ".",
            WIDTH,
            CURVE_HEIGHT)
        .of(CurveChart.of(analysis));
  }

  private static String deviationChart(Analysis analysis) {
    return new ChartSvg(
            "deviations",
            "Deviations of the blocks from the curve",
            "Fitted minus certified hardness of every block against its response.",
            WIDTH,
            DEVIATION_HEIGHT)
        .of(DeviationChart.of(analysis));
  }

  private static String where(CurveIdentity identity, Units units) {
    ResponseKind kind = identity.responseKind();
    return "h is the hardness in "
        + units.hardness()
        + " and r the "
        + kind.title()
        + (kind.unit().equals("1") ? "" : " in " + kind.unit());
  }

  private static String deviationCaption(Units units, Analysis analysis) {
    String unit = units.ordinal() ? "in " + units.hardness() : "in percent of the certified value";
    String limits =
        analysis.campaign().dossier().policy().permissibleError().isPresent()
            ? " Dashed: permissible errors of the policy."
            : " The policy states no permissible error, so none is drawn.";
    return "Deviation fitted − certified, "
        + unit
        + ". Bars: for fitting blocks two standard uncertainties of block and mean response, for"
        + " check blocks the expanded uncertainty of their deviation."
        + limits;
  }

  private static List<CoefficientRow> coefficients(ChosenCurve chosen) {
    ReportedCoefficients reported = chosen.fit().chosen().reported();
    double[] values = reported.values();
    List<CoefficientRow> rows = new ArrayList<>();
    for (int k = 0; k < values.length; k++) {
      Figures.Coefficient figures = Figures.coefficient(values[k], reported.standardUncertainty(k));
      rows.add(
          new CoefficientRow(
              Markup.of(ModelNames.coefficient(reported.names().get(k))),
              figures.value(),
              figures.standardUncertainty(),
              Figures.full(values[k])));
    }
    return rows;
  }

  private static List<PredictedRow> predicted(Analysis analysis, CandidateFit fit) {
    List<BlockResponse> blocks = analysis.fittingBlocks();
    List<PredictedRow> rows = new ArrayList<>();
    for (PredictedBlock block : fit.predicted()) {
      BlockResponse response = blocks.get(block.index());
      double u = block.standardUncertainty();
      rows.add(
          new PredictedRow(
              response.block().id(),
              Figures.value(
                  response.certificate().certified(), response.certificate().expandedUncertainty()),
              Figures.value(block.predicted(), u),
              Figures.value(block.error(), u),
              Figures.uncertainty(u),
              Figures.fixed(block.z(), 2),
              Math.abs(block.z()) > 2.5,
              block.extrapolated() ? "outside the others" : ""));
    }
    return rows;
  }

  private static List<String> scatter(ChosenCurve chosen, Units units) {
    BetweenBlockScatter scatter = chosen.fit().scatter();
    boolean relative = scatter.scale() == ScatterScale.RELATIVE;
    List<String> sentences = new ArrayList<>();
    String estimate =
        scatter.restricted() == 0
            ? "Between-block scatter: τ = 0; the blocks lie about the curve no further than their"
                + " certificates and readings explain"
            : "Between-block scatter: τ = "
                + units.scatter(scatter.restricted(), relative)
                + (relative ? " of the hardness" : "");
    sentences.add(
        estimate
            + " (restricted likelihood; 95 % interval from "
            + (scatter.low() == 0 ? "0" : units.scatter(scatter.low(), relative))
            + (Double.isInfinite(scatter.high())
                ? " with no upper end that these blocks could tell"
                : " to " + units.scatter(scatter.high(), relative))
            + "). It stands for what differs from piece to piece of the family beyond the"
            + " certificates, and counts once for the piece under test.");
    double tail = chosen.fit().upperTail();
    sentences.add(
        "Agreement without it: χ² = "
            + Figures.significant(scatter.atZero().chiSquared(), 3)
            + " with "
            + scatter.atZero().degreesOfFreedom()
            + " degrees of freedom, p "
            + (Figures.probability(tail).startsWith("<") ? "" : "= ")
            + Figures.probability(tail)
            + ".");
    sentences.add(
        "Share of plausible curves that are strictly monotone over the range: "
            + Figures.fixed(100 * chosen.monotoneShare(), 1)
            + Figures.NBSP
            + "%.");
    return sentences;
  }
}
