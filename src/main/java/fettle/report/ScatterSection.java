package fettle.report;

import fettle.calibration.Analysis;
import fettle.calibration.ResponseVariance;
import fettle.policy.TypeB;
import freemarker.template.TemplateModel;
import java.util.ArrayList;
import java.util.List;

/** How the responses scatter, in words with figures. */
final class ScatterSection {
  private ScatterSection() {}

  static List<TemplateModel> of(ReportContent content) {
    Analysis analysis = content.analysis();
    Units units = Units.of(analysis.campaign().dossier().identity());
    ResponseVariance variance = analysis.variance();
    boolean relative = variance.relative();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "Repeatability: one reading within a run has the standard deviation s = "
            + units.spreadOfResponse(variance.repeatability(), relative)
            + ", pooled over fitting blocks and runs with "
            + Figures.fixed(variance.degreesOfFreedom(), 0)
            + " degrees of freedom. "
            + model(variance));
    sentences.add(interaction(variance, units));
    sentences.add(runs(variance, units, analysis.campaign().dossier().policy().typeB()));
    return sentences.stream().map(Markup::sentence).toList();
  }

  private static String model(ResponseVariance variance) {
    String chosen =
        variance.relative()
            ? "It is taken in proportion to the response"
            : "It is taken as the same at every response";
    double mine = variance.relative() ? variance.relativeFits() : variance.constantFits();
    double other = variance.relative() ? variance.constantFits() : variance.relativeFits();
    if (mine >= Double.MAX_VALUE || other >= Double.MAX_VALUE) {
      return chosen
          + "; at least one block shows no scatter at all, so the two could not be compared.";
    }
    return chosen
        + ", which leaves the blocks’ variances more alike than the alternative"
        + " (Bartlett’s statistic over its degrees of freedom "
        + Figures.fixed(mine, 2)
        + " against "
        + Figures.fixed(other, 2)
        + ").";
  }

  private static String interaction(ResponseVariance variance, Units units) {
    if (variance.runs().size() < 2) {
      return "Block × run interaction: not estimable from one run, and absent from the budget.";
    }
    return variance.blockRun() == 0
        ? "Block × run interaction: σ_ab = 0; the means of the runs differ by no more than"
            + " repeatability explains."
        : "Block × run interaction: σ_ab = "
            + units.spreadOfResponse(variance.blockRun(), variance.relative())
            + ".";
  }

  private static String runs(ResponseVariance variance, Units units, TypeB typeB) {
    int count = variance.runs().size();
    if (variance.runEstimated()) {
      return "Run effect: σ_a = "
          + (variance.run() == 0
              ? "0"
              : units.spreadOfResponse(variance.run(), variance.relative()))
          + ", estimated from the "
          + count
          + " runs of this campaign; how well it is known is part of the coverage factor.";
    }
    String why =
        count < 4
            ? count + (count == 1 ? " run" : " runs") + " in this campaign, four are needed"
            : "the runs share too few blocks to be compared";
    return typeB.run().isPresent()
        ? "Run effect: not estimated ("
            + why
            + "); σ_a = "
            + units.spreadOfResponse(variance.run(), variance.relative())
            + " is taken from the policy."
        : "Run effect: not estimated ("
            + why
            + ") and not stated in the policy. It is absent from the budget, so that the"
            + " uncertainty of a result does not cover another day or set-up.";
  }
}
