package fettle.uncertainty;

import fettle.fit.CurveFit;
import fettle.fit.FitFailedException;
import fettle.fit.Points;
import fettle.fit.ResponseModel;
import java.util.ArrayList;
import java.util.List;

/**
 * Scatter τ between blocks of one alloy beyond what their certificates explain ("dark
 * uncertainty"), estimated together with the curve, and marginalised.
 *
 * <p><b>Likelihood:</b> restricted, L(τ) = −½ (ln|V| + ln|JᵀV⁻¹J| + Q), with τ²S added to V_h, S =
 * diag(ĥ²) where τ is relative and I where it is absolute; the curve is fitted anew at every τ. τ̂
 * is its maximum (REML); the profile interval holds where 2 (L(τ̂) − L(τ)) ≤ 3.84.
 *
 * <p><b>Marginal:</b> posterior weights ∝ π(τ) exp L(τ) on Gauss–Legendre nodes in x = τ / (τ + s).
 * The prior is π(τ) ∝ √√(Σ (S_i / (v_i + τ² S_i))²) with the variances v_i known from the stated
 * uncertainties: flat while τ is small against them, 1/τ when it is large, so that intervals then
 * tend to m − p degrees of freedom. A flat prior throughout has m − p − 1 and covers too much with
 * few blocks; the reference prior of Bodnar et al. (2017), τ times the square of this one, vanishes
 * at τ = 0 and covers too much there. Coverage of all three was measured by simulation;
 * docs/coverage.md holds the figures.
 *
 * @see "O. Bodnar, A. Link, B. Arendacká, A. Possolo, C. Elster, Bayesian estimation in random
 *     effects meta-analysis using a non-informative prior, Stat. Med. 36 (2017) 378"
 * @param scale what τ is measured against
 * @param restricted τ̂, 0 or above
 * @param low lower end of the 95 % profile interval
 * @param high upper end; infinite where the likelihood does not fall far enough
 * @param maximumLikelihood the τ that maximises the unrestricted likelihood
 * @param maximumLogLikelihood −½ (ln|V| + Q) there, constants left out
 * @param atZero the fit at τ = 0
 * @param atRestricted the fit at τ̂
 * @param nodes posterior of τ: weights sum to 1
 * @param sizes √S_i, length m
 */
public record BetweenBlockScatter(
    ScatterScale scale,
    double restricted,
    double low,
    double high,
    double maximumLikelihood,
    double maximumLogLikelihood,
    CurveFit atZero,
    CurveFit atRestricted,
    List<Node> nodes,
    double[] sizes) {
  private static final int NODES = 20;
  private static final GaussRule RULE = GaussRule.of(NODES);
  private static final int SCAN = 16;

  /** Log-density below the maximum at which the tail is cut: 1e-9 of the peak. */
  private static final double CUT = 21;

  private static final double HALF_CHI_SQUARE_95 = 1.9207294103470677;

  /**
   * One value of τ with its posterior weight.
   *
   * @param tau between-block standard uncertainty
   * @param weight posterior probability
   * @param fit the curve at this τ
   */
  public record Node(double tau, double weight, CurveFit fit) {}

  /**
   * Estimates and marginalises τ.
   *
   * @param model bound model
   * @param points points with stated uncertainties, at least p + 2
   * @param scale what τ is measured against
   * @return estimate, interval and posterior
   * @throws FitFailedException if the curve has no fit, or there are fewer than p + 2 points
   */
  public static BetweenBlockScatter of(ResponseModel model, Points points, ScatterScale scale)
      throws FitFailedException {
    Profile profile = Profile.of(model, points, scale);
    double restricted = profile.maximise(true, Profile.FINE);
    CurveFit atRestricted = profile.fitAt(restricted);
    double likelihood = profile.maximise(false, Profile.FINE);
    double top = profile.restrictedLogLikelihood(atRestricted);
    double low =
        restricted == 0
                || top - profile.restrictedLogLikelihood(profile.atZero()) <= HALF_CHI_SQUARE_95
            ? 0
            : profile.crossing(0, restricted, top - HALF_CHI_SQUARE_95);
    double high = profile.upperCrossing(restricted, top - HALF_CHI_SQUARE_95);
    return new BetweenBlockScatter(
        scale,
        restricted,
        low,
        high,
        likelihood,
        -0.5 * profile.likelihoodTerm(profile.fitAt(likelihood)),
        profile.atZero(),
        atRestricted,
        posterior(profile),
        profile.sizes());
  }

  /**
   * The points with τ̂²S added to their hardness variances, as the fit at τ̂ saw them.
   *
   * @param points the points given to {@link #of}
   * @return points with larger variances
   */
  public Points pointsAtRestricted(Points points) {
    return pointsAt(points, restricted);
  }

  /**
   * The points with τ²S added to their hardness variances.
   *
   * @param points the points given to {@link #of}
   * @param tau between-block standard uncertainty
   * @return points with larger variances
   */
  public Points pointsAt(Points points, double tau) {
    double[] variances = points.hardnessVariances();
    for (int i = 0; i < variances.length; i++) {
      double size = tau * sizes[i];
      variances[i] += size * size;
    }
    return points.withHardnessVariance(variances);
  }

  private static List<Node> posterior(Profile profile) throws FitFailedException {
    double unit = profile.unit();
    double[] density = new double[SCAN + 1];
    double best = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < SCAN; k++) {
      double x = (k + 0.5) / SCAN;
      density[k] = profile.logPosteriorInX(x, unit);
      best = Math.max(best, density[k]);
    }
    int first = 0;
    while (density[first] < best - CUT) {
      first++;
    }
    int last = SCAN - 1;
    while (density[last] < best - CUT) {
      last--;
    }
    double from = Math.max(0, first - 0.5) / SCAN;
    double to = Math.min(SCAN, last + 1.5) / SCAN;
    double[] logs = new double[NODES];
    CurveFit[] fits = new CurveFit[NODES];
    double top = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < NODES; k++) {
      double x = from + (to - from) * RULE.point(k);
      fits[k] = profile.fitAt(unit * x / (1 - x));
      logs[k] = profile.logPosteriorInX(x, unit, fits[k]) + StrictMath.log(RULE.weight(k));
      top = Math.max(top, logs[k]);
    }
    double total = 0;
    for (double log : logs) {
      total += StrictMath.exp(log - top);
    }
    List<Node> nodes = new ArrayList<>();
    double kept = 0;
    for (int k = 0; k < NODES; k++) {
      double weight = StrictMath.exp(logs[k] - top) / total;
      if (weight > 1e-9) {
        double x = from + (to - from) * RULE.point(k);
        nodes.add(new Node(unit * x / (1 - x), weight, fits[k]));
        kept += weight;
      }
    }
    double sum = kept;
    nodes.replaceAll(node -> new Node(node.tau(), node.weight() / sum, node.fit()));
    return List.copyOf(nodes);
  }
}
