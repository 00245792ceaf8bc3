package fettle.report;

import fettle.calibration.CheckBlockResult;
import fettle.calibration.ChosenCurve;
import fettle.policy.Conformity;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the curve says of the blocks that were kept out of it. */
final class CheckBlocksSection {
  private CheckBlocksSection() {}

  /**
   * What the template shows.
   *
   * @param unit the scale's symbol
   * @param hasLimits whether the policy states permissible errors
   * @param hasRule whether it states a decision rule
   * @param rows one a check block
   */
  public record View(String unit, boolean hasLimits, boolean hasRule, List<Row> rows) {}

  /**
   * One check block.
   *
   * @param block id
   * @param certified certified value with expanded uncertainty
   * @param fitted hardness from the curve
   * @param deviation fitted − certified
   * @param expandedUncertainty of the deviation
   * @param en their ratio
   * @param disagrees whether it is beyond 1
   * @param permissible permissible error
   * @param verdict verdict
   * @param verdictClass its style
   * @param probability probability of conformity
   * @param status remark where its response is out of range
   */
  public record Row(
      String block,
      String certified,
      String fitted,
      String deviation,
      String expandedUncertainty,
      String en,
      boolean disagrees,
      String permissible,
      String verdict,
      String verdictClass,
      String probability,
      String status) {}

  static View of(ReportContent content, ChosenCurve chosen) {
    Units units = Units.of(content.analysis().campaign().dossier().identity());
    var policy = content.analysis().campaign().dossier().policy();
    List<Row> rows = new ArrayList<>();
    for (CheckBlockResult result : chosen.checkBlocks()) {
      rows.add(row(result));
    }
    return new View(
        units.hardness(),
        policy.permissibleError().isPresent(),
        policy.decisionRule().isPresent(),
        rows);
  }

  private static Row row(CheckBlockResult result) {
    double certified = result.block().certificate().certified();
    double expanded = result.expandedUncertainty();
    boolean inRange = result.status() == fettle.curve.Status.IN_RANGE;
    return new Row(
        result.block().block().id(),
        Figures.pair(certified, result.block().certificate().expandedUncertainty()),
        Figures.value(result.hardness(), expanded),
        Figures.value(result.deviation(), expanded),
        Figures.uncertainty(expanded),
        Figures.fixed(result.en(), 2),
        Math.abs(result.en()) > 1,
        result.permissibleError().isPresent()
            ? Figures.uncertainty(result.permissibleError().getAsDouble())
            : "–",
        result.conformity().map(Conformity::text).orElse("–"),
        result
            .conformity()
            .map(c -> c.name().toLowerCase(Locale.ROOT).replace('_', '-'))
            .orElse("none"),
        result.conformityProbability().isPresent()
            ? Figures.probability(result.conformityProbability().getAsDouble())
            : "–",
        inRange ? "" : result.status().text());
  }
}
