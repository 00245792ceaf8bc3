package fettle.report;

import fettle.calibration.Analysis;
import fettle.calibration.Candidate;
import fettle.calibration.CandidateFit;
import fettle.calibration.ModelChoice;
import fettle.fit.CurveFit;
import fettle.fit.ModelId;
import fettle.fit.Monotonicity;
import fettle.uncertainty.ScatterScale;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Every model that was tried, what speaks for and against it, and why one was taken. */
final class CandidatesSection {
  private CandidatesSection() {}

  /**
   * What the template shows.
   *
   * @param errorHeading heading of the leave-one-out errors
   * @param scatterHeading heading of the between-block scatter
   * @param rows one a model
   * @param reason the recommendation in words
   * @param choice a person's choice in words, empty where there is none
   */
  public record View(
      String errorHeading, String scatterHeading, List<Row> rows, String reason, String choice) {}

  /**
   * One model.
   *
   * @param model name
   * @param mark whether it is the curve's or recommended
   * @param parameters number of parameters
   * @param chiSquared χ² with degrees of freedom
   * @param probability probability of a larger χ²
   * @param gamma largest weighted deviation
   * @param aicc Akaike's criterion
   * @param leaveOneOut leave-one-out error
   * @param scatter between-block scatter
   * @param monotone verdict on the slope
   * @param remark refusal, or that it qualifies
   * @param refused whether it is refused
   */
  public record Row(
      String model,
      String mark,
      String parameters,
      String chiSquared,
      String probability,
      String gamma,
      String aicc,
      String leaveOneOut,
      String scatter,
      String monotone,
      String remark,
      boolean refused) {}

  static View of(ReportContent content) {
    Analysis analysis = content.analysis();
    Units units = Units.of(analysis.campaign().dossier().identity());
    List<Row> rows = new ArrayList<>();
    Optional<ModelId> taken = analysis.chosen().map(chosen -> chosen.curve().model());
    for (Candidate candidate : analysis.candidates()) {
      rows.add(row(candidate, taken, analysis.recommendation().model()));
    }
    Optional<ModelChoice> choice = analysis.chosen().flatMap(chosen -> chosen.choice());
    return new View(
        units.hardnessHeading("Leave-one-out rms"),
        units.ordinal()
            ? units.hardnessHeading("τ")
            : "τ" + Figures.NBSP + "/" + Figures.NBSP + "%",
        rows,
        analysis.recommendation().reason(),
        choice
            .map(c -> c.by() + " chose " + ModelNames.of(c.model()) + ": “" + c.reason() + "”")
            .orElse(""));
  }

  private static Row row(
      Candidate candidate, Optional<ModelId> taken, Optional<ModelId> recommended) {
    ModelId model = candidate.model();
    String mark = taken.equals(Optional.of(model)) ? "curve" : "";
    if (mark.isEmpty() && recommended.equals(Optional.of(model))) {
      mark = "recommended";
    }
    String remark = candidate.refusal().orElse("qualifies");
    boolean refused = candidate.refusal().isPresent();
    String parameters = Integer.toString(model.parameterCount());
    String name = model.name().replace('-', '\u2011');
    if (candidate.fit().isEmpty()) {
      return new Row(name, mark, parameters, "–", "–", "–", "–", "–", "–", "–", remark, refused);
    }
    CandidateFit fit = candidate.fit().get();
    CurveFit zero = fit.scatter().atZero();
    double tau = fit.scatter().restricted();
    boolean relative = fit.scatter().scale() == ScatterScale.RELATIVE;
    return new Row(
        name,
        mark,
        parameters,
        Figures.significant(zero.chiSquared(), 3)
            + Figures.NBSP
            + "("
            + zero.degreesOfFreedom()
            + ")",
        Figures.probability(fit.upperTail()),
        Figures.fixed(fit.gamma(), 2),
        fit.aicc().isPresent() ? Figures.fixed(fit.aicc().getAsDouble(), 1) : "–",
        Figures.significant(fit.leaveOneOutRms(), 3),
        relative ? Figures.percent(tau) : Figures.significant(tau, 2),
        monotone(fit.monotonicity()),
        remark,
        refused);
  }

  private static String monotone(Monotonicity monotonicity) {
    return switch (monotonicity) {
      case INCREASING -> "rising";
      case DECREASING -> "falling";
      case NOT_MONOTONE -> "no";
      case UNDECIDED -> "undecided";
    };
  }
}
