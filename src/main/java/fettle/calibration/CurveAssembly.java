package fettle.calibration;

import fettle.curve.CovariancePart;
import fettle.curve.Curve;
import fettle.curve.CurveIdentity;
import fettle.curve.PosteriorNode;
import fettle.curve.ResponseScatter;
import fettle.curve.RunEffects;
import fettle.curve.SharedSource;
import fettle.curve.ValidRange;
import fettle.fit.ArgumentScaling;
import fettle.fit.CurveFit;
import fettle.fit.FitFailedException;
import fettle.fit.FitSensitivity;
import fettle.fit.ModelId;
import fettle.fit.Points;
import fettle.fit.RationalModel;
import fettle.fit.ResponseModel;
import fettle.fit.SeriesModel;
import fettle.policy.Policy;
import fettle.uncertainty.BetweenBlockScatter;
import fettle.uncertainty.ScatterScale;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Puts a curve together from a candidate's fit, with its covariance split by source. */
final class CurveAssembly {
  private final CampaignPoints campaign;
  private final CandidateFit candidate;
  private final Policy policy;

  CurveAssembly(CampaignPoints campaign, CandidateFit candidate, Policy policy) {
    this.campaign = campaign;
    this.candidate = candidate;
    this.policy = policy;
  }

  /** The curve over the hull of the adjusted responses. */
  Curve assemble(CurveIdentity identity) throws FitFailedException {
    BetweenBlockScatter scatter = candidate.scatter();
    CurveFit fit = scatter.atRestricted();
    Points seen = scatter.pointsAtRestricted(campaign.points());
    FitSensitivity sensitivity = new FitSensitivity(fit, seen);
    List<SharedSource> shared = new ArrayList<>();
    for (int s = 0; s < campaign.machines().size(); s++) {
      shared.add(
          new SharedSource(
              campaign.machines().get(s), sensitivity.ofHardnessShift(seen.hardnessEffect(s))));
    }
    List<double[]> runs = new ArrayList<>();
    for (double[] loading : campaign.runLoadings()) {
      runs.add(sensitivity.ofResponseShift(loading));
    }
    ResponseVariance variance = campaign.variance();
    int p = fit.parameterCount();
    double nu = fit.degreesOfFreedom();
    double factor =
        Math.sqrt(p * FDistribution.of(p, nu).inverseCumulativeProbability(0.95))
            / TDistribution.of(nu).inverseCumulativeProbability(0.975);
    return new Curve(
        identity,
        modelId(),
        argumentOf(candidate.model()),
        fit.beta(),
        fit.covariance(),
        scatter.scale() == ScatterScale.RELATIVE,
        scatter.restricted(),
        nodes(scatter),
        shared,
        new RunEffects(
            variance.relative(),
            variance.run(),
            variance.runEstimated(),
            runs,
            variance.runNodes()),
        new ResponseScatter(
            variance.relative(),
            variance.repeatability(),
            variance.degreesOfFreedom(),
            policy.responseResolution().orElse(0),
            policy.typeB().operator().orElse(0),
            policy.typeB().drift().orElse(0),
            policy.typeB().temperature().orElse(0)),
        parts(sensitivity, fit),
        factor,
        hull(fit));
  }

  private ModelId modelId() {
    return new ModelId(candidate.model().id());
  }

  private static ArgumentScaling argumentOf(ResponseModel model) {
    if (model instanceof SeriesModel series) {
      return series.argument();
    }
    return ((RationalModel) model).argument();
  }

  private List<PosteriorNode> nodes(BetweenBlockScatter scatter) throws FitFailedException {
    List<PosteriorNode> nodes = new ArrayList<>();
    double sigma = campaign.variance().run();
    for (BetweenBlockScatter.Node node : scatter.nodes()) {
      double[] covariance = node.fit().covariance().clone();
      if (sigma > 0) {
        FitSensitivity sensitivity =
            new FitSensitivity(node.fit(), scatter.pointsAt(campaign.points(), node.tau()));
        for (double[] loading : campaign.runLoadings()) {
          subtractSquare(covariance, sensitivity.ofResponseShift(loading), sigma);
        }
      }
      nodes.add(new PosteriorNode(node.weight(), node.tau(), node.fit().beta(), covariance));
    }
    return nodes;
  }

  private static void subtractSquare(double[] covariance, double[] delta, double sigma) {
    int p = delta.length;
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        covariance[i * p + j] -= sigma * sigma * delta[i] * delta[j];
      }
    }
  }

  private List<CovariancePart> parts(FitSensitivity sensitivity, CurveFit fit) {
    double[][] byPoint = sensitivity.byPoint();
    int m = byPoint.length;
    double[] repeatability = new double[m];
    double[] interaction = new double[m];
    double[] scatter = new double[m];
    BetweenBlockScatter between = candidate.scatter();
    for (int i = 0; i < m; i++) {
      double slope = fit.slopes()[i];
      repeatability[i] = slope * slope * campaign.repeatabilityVariance()[i];
      interaction[i] = slope * slope * campaign.interactionVariance()[i];
      double size = between.restricted() * between.sizes()[i];
      scatter[i] = size * size;
    }
    List<CovariancePart> parts = new ArrayList<>();
    parts.add(part("repeatability in the campaign", byPoint, repeatability, true));
    parts.add(
        part(
            "block × run interaction",
            byPoint,
            interaction,
            campaign.variance().runs().size() > 1));
    parts.add(
        part("certificates, independent part", byPoint, campaign.certificateVariance(), true));
    parts.add(
        part(
            "non-uniformity of the blocks",
            byPoint,
            campaign.nonUniformityVariance(),
            campaign.nonUniformityStated()));
    parts.add(part("between-block scatter in the curve", byPoint, scatter, true));
    if (!campaign.operators().isEmpty()) {
      Points points = campaign.points();
      int first = points.responseEffectCount() - campaign.operators().size();
      int p = fit.parameterCount();
      double[] covariance = new double[p * p];
      for (int k = first; k < points.responseEffectCount(); k++) {
        subtractSquare(covariance, sensitivity.ofResponseShift(points.responseEffect(k)), 1);
      }
      for (int k = 0; k < covariance.length; k++) {
        covariance[k] = -covariance[k];
      }
      parts.add(new CovariancePart("operators in the campaign (Type B)", covariance, true));
    }
    return parts;
  }

  private static CovariancePart part(
      String source, double[][] byPoint, double[] variance, boolean present) {
    int p = byPoint[0].length;
    double[] covariance = new double[p * p];
    for (int i = 0; i < byPoint.length; i++) {
      for (int j = 0; j < p; j++) {
        for (int k = 0; k < p; k++) {
          covariance[j * p + k] += variance[i] * byPoint[i][j] * byPoint[i][k];
        }
      }
    }
    return new CovariancePart(source, covariance, present);
  }

  private static ValidRange hull(CurveFit fit) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double xi : fit.adjustedResponses()) {
      low = Math.min(low, xi);
      high = Math.max(high, xi);
    }
    double first = fit.model().value(low, fit.beta());
    double last = fit.model().value(high, fit.beta());
    String reason = "end of the fitting blocks";
    return new ValidRange(low, high, Math.min(first, last), Math.max(first, last), reason, reason);
  }
}
