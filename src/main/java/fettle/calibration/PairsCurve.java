package fettle.calibration;

import fettle.curve.HardnessEstimate;
import fettle.fit.CurveFit;
import fettle.fit.CurveSolver;
import fettle.fit.FitFailedException;
import fettle.fit.ModelId;
import fettle.fit.Monotonicity;
import fettle.fit.Points;
import fettle.fit.QuadraticForm;
import fettle.reading.Pair;
import fettle.reading.Pairs;
import fettle.statistics.NormalMixture;
import fettle.table.DecimalText;
import fettle.uncertainty.BetweenBlockScatter;
import fettle.uncertainty.CurveTrial;
import fettle.uncertainty.MonteCarlo;
import fettle.uncertainty.MonteCarloResult;
import fettle.uncertainty.ScatterScale;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * A curve through pairs of response and hardness with the uncertainties as stated.
 *
 * <p>Intervals of the curve take the normal coverage factor where uncertainties are stated,
 * Student's t with m − p degrees of freedom where none are (the residual scatter then is the
 * uncertainty), and the marginal over τ where between-block scatter is asked for.
 *
 * @param points the points
 * @param fit the fit; at τ̂ where between-block scatter is estimated
 * @param scatter between-block scatter, where asked for
 * @param monotonicity proven over the responses of the points
 */
public record PairsCurve(
    Points points, CurveFit fit, Optional<BetweenBlockScatter> scatter, Monotonicity monotonicity) {
  private static final double NORMAL_95 = 1.959963984540054;
  private static final int LARGEST_ADAPTIVE = 4_000_000;

  /**
   * Fits.
   *
   * @param pairs pairs as read
   * @param model model
   * @param betweenBlock whether between-block scatter is estimated: relative where all hardnesses
   *     are above 0, else in hardness units
   * @return the curve
   * @throws FitFailedException if there is none
   */
  public static PairsCurve of(Pairs pairs, ModelId model, boolean betweenBlock)
      throws FitFailedException {
    Points points = pointsOf(pairs);
    Optional<BetweenBlockScatter> scatter = Optional.empty();
    CurveFit fit;
    if (betweenBlock) {
      boolean positive = Arrays.stream(points.hardnesses()).allMatch(h -> h > 0);
      BetweenBlockScatter found =
          BetweenBlockScatter.of(
              model.bind(points.responses()),
              points,
              positive ? ScatterScale.RELATIVE : ScatterScale.ABSOLUTE);
      scatter = Optional.of(found);
      fit = found.atRestricted();
    } else {
      fit = CurveSolver.fit(model, points);
    }
    double low = Arrays.stream(points.responses()).min().orElseThrow();
    double high = Arrays.stream(points.responses()).max().orElseThrow();
    return new PairsCurve(points, fit, scatter, fit.model().monotonicity(fit.beta(), low, high));
  }

  private static Points pointsOf(Pairs pairs) throws FitFailedException {
    int m = pairs.points().size();
    double[] response = new double[m];
    double[] hardness = new double[m];
    double[] responseVariance = new double[m];
    double[] hardnessVariance = new double[m];
    BigDecimal[] exactResponse = new BigDecimal[m];
    BigDecimal[] exactHardness = new BigDecimal[m];
    Map<String, double[]> groups = new LinkedHashMap<>();
    for (int i = 0; i < m; i++) {
      Pair pair = pairs.points().get(i);
      response[i] = pair.response().value();
      hardness[i] = pair.hardness().value();
      exactResponse[i] = pair.response().exact();
      exactHardness[i] = pair.hardness().exact();
      double ur = pair.responseUncertainty().map(DecimalText::value).orElse(0.0);
      double uh = pair.hardnessUncertainty().map(DecimalText::value).orElse(0.0);
      double shared = pair.sharedUncertainty().map(DecimalText::value).orElse(0.0);
      responseVariance[i] = ur * ur;
      hardnessVariance[i] = uh * uh;
      if (shared > 0 && pair.group().isPresent()) {
        groups.computeIfAbsent(pair.group().get(), name -> new double[m])[i] = shared;
      }
    }
    groups.values().removeIf(effect -> membersOf(effect) < 2);
    for (double[] effect : groups.values()) {
      for (int i = 0; i < m; i++) {
        // (u − c)(u + c) keeps more digits than u² − c² where the two are close.
        double uh = Math.sqrt(hardnessVariance[i]);
        hardnessVariance[i] =
            effect[i] == 0 ? hardnessVariance[i] : Math.max(0, (uh - effect[i]) * (uh + effect[i]));
      }
    }
    return Points.of(
            response,
            hardness,
            responseVariance,
            hardnessVariance,
            new double[0][],
            groups.values().toArray(new double[0][]))
        .withDecimals(exactResponse, exactHardness);
  }

  /** A source shared by one point alone is an independent part of that point. */
  private static long membersOf(double[] effect) {
    return Arrays.stream(effect).filter(c -> c != 0).count();
  }

  /**
   * The curve at a response: no reading scatter.
   *
   * @param response in the response unit
   * @return hardness with uncertainty
   */
  public HardnessEstimate at(double response) {
    double hardness = fit.model().value(response, fit.beta());
    double u = Math.sqrt(Math.max(0, fit.varianceOfCurveAt(response)));
    if (scatter.isPresent()) {
      NormalMixture mixture = new NormalMixture(scatter.get().nodes().size());
      double[] line = new double[fit.parameterCount() + 2];
      for (BetweenBlockScatter.Node node : scatter.get().nodes()) {
        CurveFit other = node.fit();
        other.model().linearise(response, other.beta(), line);
        double variance = QuadraticForm.of(line, 2, other.covariance(), fit.parameterCount());
        mixture.add(node.weight(), line[0] - hardness, Math.sqrt(Math.max(0, variance)));
      }
      return new HardnessEstimate(hardness, u, mixture.halfWidth(0.95));
    }
    double factor =
        fit.uncertaintiesStated()
            ? NORMAL_95
            : TDistribution.of(fit.degreesOfFreedom()).inverseCumulativeProbability(0.975);
    return new HardnessEstimate(hardness, u, factor * u);
  }

  /**
   * A fixed number of Monte Carlo trials of the whole calibration.
   *
   * @param grid responses at which the curve is wanted
   * @param trials number of trials, at least 1000
   * @param seed seed
   * @param threads number of threads
   * @return one output a response
   */
  public MonteCarloResult monteCarlo(double[] grid, int trials, long seed, int threads) {
    Points seen = seenPoints();
    return MonteCarlo.fixed(
        () -> new CurveTrial(seen, fit, grid), grid.length, trials, seed, threads);
  }

  /**
   * Monte Carlo with as many trials as it takes for two significant digits (JCGM 101:2008, 7.9).
   *
   * @param grid responses at which the curve is wanted
   * @param seed seed
   * @param threads number of threads
   * @return one output a response
   */
  public MonteCarloResult adaptiveMonteCarlo(double[] grid, long seed, int threads) {
    Points seen = seenPoints();
    return MonteCarlo.adaptive(
        () -> new CurveTrial(seen, fit, grid), grid.length, 2, LARGEST_ADAPTIVE, seed, threads);
  }

  private Points seenPoints() {
    return scatter.map(found -> found.pointsAtRestricted(points)).orElse(points);
  }

  /**
   * Equally spaced responses over the range of the points.
   *
   * @param count number of responses, at least 2
   * @return from the lowest to the highest response
   */
  public double[] grid(int count) {
    double low = Arrays.stream(points.responses()).min().orElseThrow();
    double high = Arrays.stream(points.responses()).max().orElseThrow();
    double[] grid = new double[count];
    for (int k = 0; k < count; k++) {
      grid[k] = k == count - 1 ? high : low + k * (high - low) / (count - 1);
    }
    return grid;
  }
}
