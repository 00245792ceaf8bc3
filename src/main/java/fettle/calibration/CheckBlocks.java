package fettle.calibration;

import fettle.curve.Curve;
import fettle.curve.PosteriorNode;
import fettle.curve.RunEffects;
import fettle.curve.SharedSource;
import fettle.fit.QuadraticForm;
import fettle.fit.ResponseModel;
import fettle.policy.Conformity;
import fettle.policy.Policy;
import fettle.statistics.NormalMixture;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Judges the blocks that were kept out of fitting.
 *
 * <pre>  u²(d) = u²(curve) + g′² u²(r̄) + u_b² + w_b² + τ² S − what curve and block share</pre>
 *
 * <p>A bench machine behind both certificates moves curve and block alike, so its effect on the
 * deviation is g_βᵀδβ_s − c_s,b; a run in which both were read likewise g_βᵀδβ_k + g′ z_kb. τ
 * enters once, for the block's own membership in the family (ISO 13528; JCGM 106:2012).
 */
final class CheckBlocks {
  private final Curve curve;
  private final CampaignPoints campaign;
  private final Policy policy;
  private final ResponseModel function;
  private final int p;

  CheckBlocks(Curve curve, CampaignPoints campaign, Policy policy) {
    this.curve = curve;
    this.campaign = campaign;
    this.policy = policy;
    this.function = curve.function();
    this.p = curve.beta().length;
  }

  List<CheckBlockResult> judge(List<BlockResponse> blocks) {
    List<CheckBlockResult> results = new ArrayList<>();
    for (BlockResponse block : blocks) {
      results.add(judge(block));
    }
    return List.copyOf(results);
  }

  private CheckBlockResult judge(BlockResponse block) {
    double r = block.mean();
    double[] line = new double[p + 2];
    function.linearise(r, curve.beta(), line);
    double hardness = line[0];
    double deviation = hardness - block.certificate().certified();
    double own = ownVariance(block, line[1]);
    double sharedChange = sharedChange(block, line);
    double runs = runVariancePerUnit(block, line);
    double size = curve.scatterRelative() ? hardness : 1;
    NormalMixture about = new NormalMixture(curve.nodes().size() * curve.runs().nodes().size());
    NormalMixture trueDeviation =
        new NormalMixture(curve.nodes().size() * curve.runs().nodes().size());
    double[] nodeLine = new double[p + 2];
    for (PosteriorNode node : curve.nodes()) {
      function.linearise(r, node.beta(), nodeLine);
      double scatter = node.tau() * size;
      double fixed =
          Math.max(0, QuadraticForm.of(nodeLine, 2, node.covariance(), p) + sharedChange)
              + own
              + scatter * scatter;
      for (RunEffects.Node run : curve.runs().nodes()) {
        double sigma = run.standardDeviation();
        double deviationOfNode = Math.sqrt(fixed + runs * sigma * sigma);
        double weight = node.weight() * run.weight();
        about.add(weight, nodeLine[0] - hardness, deviationOfNode);
        trueDeviation.add(weight, nodeLine[0] - block.certificate().certified(), deviationOfNode);
      }
    }
    double expanded = about.halfWidth(0.95);
    OptionalDouble permissible =
        policy
            .permissibleError()
            .map(limits -> OptionalDouble.of(limits.at(block.certificate().certified())))
            .orElse(OptionalDouble.empty());
    Optional<Conformity> conformity =
        permissible.isPresent()
            ? policy
                .decisionRule()
                .map(rule -> rule.judge(deviation, expanded, permissible.getAsDouble()))
            : Optional.empty();
    OptionalDouble probability =
        permissible.isPresent()
            ? OptionalDouble.of(trueDeviation.probabilityWithin(permissible.getAsDouble()))
            : OptionalDouble.empty();
    return new CheckBlockResult(
        block,
        curve.range().statusOf(r),
        hardness,
        deviation,
        standardUncertainty(line, own, sharedChange, runs, size),
        expanded,
        deviation / expanded,
        permissible,
        conformity,
        probability);
  }

  private double standardUncertainty(
      double[] line, double own, double sharedChange, double runs, double size) {
    double sigma = curve.runs().standardDeviation();
    double runsInCurve = 0;
    for (double[] delta : curve.runs().deltaBeta()) {
      double along = along(line, delta) * sigma;
      runsInCurve += along * along;
    }
    double scatter = curve.tau() * size;
    double curveVariance =
        QuadraticForm.of(line, 2, curve.covariance(), p) - runsInCurve + sharedChange;
    return Math.sqrt(Math.max(0, curveVariance) + own + scatter * scatter + runs * sigma * sigma);
  }

  private double ownVariance(BlockResponse block, double slope) {
    ResponseVariance variance = campaign.variance();
    double size = variance.sizeAt(block.mean());
    double nu = variance.degreesOfFreedom();
    double inflation = nu > 2 ? nu / (nu - 2) : 3;
    double repeatability = inflation * square(variance.repeatability() * size) / block.count();
    double interaction = 0;
    for (Map.Entry<String, Integer> run : block.readingsPerRun().entrySet()) {
      interaction += square(variance.blockRun() * size * block.shareOfRun(run.getKey()));
    }
    double u = block.certificate().standardUncertainty();
    return slope * slope * (repeatability + interaction)
        + u * u
        + square(block.certificate().nonUniformity().orElse(0));
  }

  /** What sharing a bench machine with the curve changes in the variance of the deviation. */
  private double sharedChange(BlockResponse block, double[] line) {
    double c = block.certificate().sharedUncertainty().orElse(0);
    String machine = block.certificate().referenceMachine().orElse("");
    for (SharedSource source : curve.sharedSources()) {
      if (source.name().equals(machine)) {
        return -2 * along(line, source.deltaBeta()) * c;
      }
    }
    return 0;
  }

  private double runVariancePerUnit(BlockResponse block, double[] line) {
    double sum = 0;
    List<String> runs = campaign.variance().runs();
    double size = curve.runs().loadingAt(Math.abs(block.mean()));
    for (int k = 0; k < runs.size(); k++) {
      double along = along(line, curve.runs().deltaBeta().get(k));
      sum += square(along + line[1] * block.shareOfRun(runs.get(k)) * size);
    }
    for (String run : block.readingsPerRun().keySet()) {
      if (!runs.contains(run)) {
        sum += square(line[1] * block.shareOfRun(run) * size);
      }
    }
    return sum;
  }

  private double along(double[] line, double[] delta) {
    double sum = 0;
    for (int k = 0; k < p; k++) {
      sum += line[2 + k] * delta[k];
    }
    return sum;
  }

  private static double square(double x) {
    return x * x;
  }
}
