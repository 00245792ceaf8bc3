package fettle.curve;

import fettle.fit.QuadraticForm;
import fettle.fit.ResponseModel;
import fettle.statistics.NormalMixture;
import java.util.ArrayList;
import java.util.List;

/**
 * Evaluates a curve: hardness, standard uncertainty, 95 % half-width, budget.
 *
 * <pre>
 *   u²(curve)  = g_βᵀ Cov(β) g_β
 *   u²(result) = u²(curve) + g′² (s²/n + σ_a² z² + (u_oper² + u_drift² + u_T²) r² + δ²/12) + τ² S(h)
 * </pre>
 *
 * <p>The standard uncertainty stands at the estimated variances τ̂² and σ_a². The half-width U is
 * that of the marginal over both: it holds 95 % of the mixture of normal distributions, one for
 * each value of τ and σ_a with its posterior weight, about the hardness given by the coefficients.
 * Their ratio is the coverage factor (GUM:2008, 6.2.1 and G.3).
 *
 * <p>Holds working storage: one evaluator, one thread.
 */
public final class CurveEvaluator {
  private static final double PROBABILITY = 0.95;

  /** Components lighter than this cannot move a 95 % half-width by a part in a million. */
  private static final double NEGLIGIBLE = 1e-9;

  private final Curve curve;
  private final ResponseModel function;
  private final int p;
  private final double[] line;
  private final double[] nodeLine;
  private final NormalMixture mixture;

  CurveEvaluator(Curve curve) {
    this.curve = curve;
    this.function = curve.function();
    this.p = function.parameterCount();
    this.line = new double[p + 2];
    this.nodeLine = new double[p + 2];
    this.mixture = new NormalMixture(curve.nodes().size() * curve.runs().nodes().size());
  }

  /**
   * Hardness at a response, whether in range or not.
   *
   * @param response in the response unit
   * @return in the scale's unit
   */
  public double hardness(double response) {
    return function.value(response, curve.beta());
  }

  /**
   * The curve itself at a response: no reading scatter, no test piece.
   *
   * @param response in the response unit
   * @return hardness with pointwise uncertainty
   */
  public HardnessEstimate curveAt(double response) {
    return estimate(response, 0, false);
  }

  /**
   * Half-width of the band that holds the whole curve over its range at once with 95 % probability
   * (H. Scheffé, 1959, The Analysis of Variance, section 3.5).
   *
   * @param response in the response unit
   * @return in the scale's unit
   */
  public double simultaneousHalfWidth(double response) {
    return curveAt(response).expandedUncertainty() * curve.simultaneousFactor();
  }

  /**
   * A result on a test piece of the family: the mean of n readings of one run.
   *
   * @param response mean response
   * @param n number of readings, at least 1
   * @param standardDeviation of the readings on the piece, NaN where unknown; the larger of it and
   *     the campaign's pooled repeatability counts
   * @return hardness with uncertainty
   */
  public HardnessEstimate resultAt(double response, int n, double standardDeviation) {
    if (n < 1) {
      throw new IllegalArgumentException("n " + n + ": 1 or more expected");
    }
    return estimate(response, readingVariance(response, n, standardDeviation), true);
  }

  private double readingVariance(double response, int n, double standardDeviation) {
    ResponseScatter scatter = curve.scatter();
    double own = scatter.repeatabilityAt(response);
    double s = standardDeviation > own ? standardDeviation : own;
    return s * s / n
        + square(scatter.operator() * response)
        + square(scatter.drift() * response)
        + square(scatter.temperature() * response)
        + square(scatter.resolution()) / 12;
  }

  private HardnessEstimate estimate(double response, double responseVariance, boolean result) {
    function.linearise(response, curve.beta(), line);
    double hardness = line[0];
    double slope = line[1];
    double size = curve.scatterRelative() ? hardness : 1;
    double fixed = slope * slope * responseVariance;
    double runLoading = runVariancePerUnit(response, slope, result);
    double variance = QuadraticForm.of(line, 2, curve.covariance(), p) + fixed;
    if (result) {
      variance +=
          square(curve.tau() * size)
              + square(slope * curve.runs().loadingAt(response) * curve.runs().standardDeviation());
    }
    mixture.clear();
    for (PosteriorNode node : curve.nodes()) {
      function.linearise(response, node.beta(), nodeLine);
      double own = QuadraticForm.of(nodeLine, 2, node.covariance(), p) + fixed;
      if (result) {
        own += square(node.tau() * size);
      }
      for (RunEffects.Node run : curve.runs().nodes()) {
        double weight = node.weight() * run.weight();
        if (weight > NEGLIGIBLE) {
          mixture.add(
              weight,
              nodeLine[0] - hardness,
              Math.sqrt(own + runLoading * square(run.standardDeviation())));
        }
      }
    }
    return new HardnessEstimate(hardness, Math.sqrt(variance), mixture.halfWidth(PROBABILITY));
  }

  private double runVariancePerUnit(double response, double slope, boolean result) {
    double sum = result ? square(slope * curve.runs().loadingAt(response)) : 0;
    for (double[] delta : curve.runs().deltaBeta()) {
      sum += square(along(delta));
    }
    return sum;
  }

  private double along(double[] delta) {
    double sum = 0;
    for (int k = 0; k < p; k++) {
      sum += line[2 + k] * delta[k];
    }
    return sum;
  }

  /**
   * The part of the curve's error at a response that one shared source makes up.
   *
   * @param response in the response unit
   * @param source name of the source
   * @return what one standard uncertainty of the source does to the hardness; 0 for a source that
   *     the curve does not know
   */
  public double sharedPart(double response, String source) {
    function.linearise(response, curve.beta(), line);
    for (SharedSource shared : curve.sharedSources()) {
      if (shared.name().equals(source)) {
        return along(shared.deltaBeta());
      }
    }
    return 0;
  }

  /**
   * The budget of a result.
   *
   * @param response mean response
   * @param n number of readings, at least 1
   * @param standardDeviation of the readings, NaN where unknown
   * @return its lines; their squares sum to the squared standard uncertainty of {@link #resultAt}
   */
  public List<BudgetLine> budget(double response, int n, double standardDeviation) {
    function.linearise(response, curve.beta(), line);
    double hardness = line[0];
    double slope = Math.abs(line[1]);
    List<BudgetLine> lines = new ArrayList<>();
    for (CovariancePart part : curve.parts()) {
      double variance = QuadraticForm.of(line, 2, part.covariance(), p);
      lines.add(curveLine(part.source(), Math.sqrt(Math.max(0, variance)), part.present()));
    }
    for (SharedSource shared : curve.sharedSources()) {
      lines.add(
          curveLine("shared source: " + shared.name(), Math.abs(along(shared.deltaBeta())), true));
    }
    RunEffects runs = curve.runs();
    double sum = 0;
    for (double[] delta : runs.deltaBeta()) {
      sum += square(along(delta));
    }
    boolean runsKnown = runs.standardDeviation() > 0;
    boolean runsStated = runs.estimated() || runsKnown;
    lines.add(
        curveLine(
            "run effects in the campaign", Math.sqrt(sum) * runs.standardDeviation(), runsStated));
    ResponseScatter scatter = curve.scatter();
    double own = scatter.repeatabilityAt(response);
    double s = standardDeviation > own ? standardDeviation : own;
    lines.add(resultLine("readings on the test piece", slope * s / Math.sqrt(n), true));
    lines.add(
        resultLine(
            "run effect of the test",
            slope * runs.loadingAt(Math.abs(response)) * runs.standardDeviation(),
            runsStated));
    lines.add(relativeLine("operator", slope, response, scatter.operator()));
    lines.add(relativeLine("drift of the probe", slope, response, scatter.drift()));
    lines.add(relativeLine("temperature", slope, response, scatter.temperature()));
    lines.add(
        resultLine(
            "resolution of the response",
            slope * scatter.resolution() / Math.sqrt(12),
            scatter.resolution() > 0));
    double size = curve.scatterRelative() ? Math.abs(hardness) : 1;
    lines.add(
        resultLine(
            "between-block scatter (the piece belongs to the family)", curve.tau() * size, true));
    return List.copyOf(lines);
  }

  private static BudgetLine curveLine(String source, double u, boolean present) {
    return new BudgetLine(source, BudgetLine.Part.CURVE, u, present);
  }

  private static BudgetLine resultLine(String source, double u, boolean present) {
    return new BudgetLine(source, BudgetLine.Part.RESULT, u, present);
  }

  private static BudgetLine relativeLine(String source, double slope, double response, double u) {
    return resultLine(source, slope * Math.abs(response) * u, u > 0);
  }

  private static double square(double x) {
    return x * x;
  }
}
