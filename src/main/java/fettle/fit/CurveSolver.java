package fettle.fit;

import fettle.fit.FitFailedException.Reason;

/**
 * Generalized distance regression with full covariances (ISO/TS 28037:2010 for the line, ISO/TS
 * 28038:2018 for polynomials, ISO 6143 for general analysis functions):
 *
 * <pre>
 *   Q = (r̄ − ξ)ᵀ V_r⁻¹ (r̄ − ξ) + (H − g(ξ; β))ᵀ V_h⁻¹ (H − g(ξ; β))  → min over β, ξ
 * </pre>
 *
 * <p><b>Method:</b> Gauss–Newton on β, ξ and the shared effects together. Shared errors are unknown
 * effects η, ζ of unit variance, so that only diagonal matrices are inverted; ξ is eliminated point
 * by point, which leaves a (p + q) × (p + q) system with the effective variances v = v_h + (dg/dr)²
 * v_r. Long steps follow the curvature of the model; β is held back when Q would grow or the model
 * bends too much. Iteration goes on until the step no longer shrinks, at rounding level, and what
 * it stops at is a minimum to 0.001 standard uncertainties or an error. V_r = 0 is generalized
 * least squares; without uncertainties it is ordinary least squares with s² estimated.
 *
 * <p><b>Polynomials without uncertain responses</b> are linear: they are solved in double-double
 * arithmetic by {@link PrecisePolynomialFit}, so that printed reference results are met in all
 * their digits.
 *
 * <p><b>Cost:</b> O(m (p + q)²) an iteration.
 *
 * <p><b>Fails</b> with a reason when there are m ≤ p points, when the points do not determine the
 * parameters, when a value leaves the model's domain, when the step has not settled after 500
 * iterations, or when no step lowers Q although the minimum is elsewhere.
 */
public final class CurveSolver {
  private static final int MAX_ITERATIONS = 500;

  /** Relative steps below this may be rounding. */
  private static final double ROUNDING_LEVEL = 1e-10;

  /** Steps that move β by less than this many standard uncertainties may be rounding. */
  private static final double ROUNDING_MOVE = 1e-9;

  /** Distance from the minimum, in standard uncertainties, that still counts as there. */
  private static final double LARGEST_OFFSET = 1e-3;

  /** Steps that change nothing, though the minimum is elsewhere, before the search is given up. */
  private static final int LONGEST_HELD = 30;

  /** Condition number of the scaled, whitened Jacobian beyond which there is no fit. */
  private static final double WORST_CONDITION = 1e10;

  private CurveSolver() {}

  /**
   * Fits a model named by its id, from its own start.
   *
   * @param id model
   * @param points at least p + 1 points
   * @return the fit
   * @throws FitFailedException if there is none
   */
  public static CurveFit fit(ModelId id, Points points) throws FitFailedException {
    if (points.size() <= id.parameterCount()) {
      throw tooFew(id.name(), id.parameterCount(), points.size());
    }
    ResponseModel model = id.bind(points.responses());
    return fit(model, points);
  }

  /**
   * Fits a model from its own start.
   *
   * @param model bound model
   * @param points at least p + 1 points
   * @return the fit
   * @throws FitFailedException if there is none
   */
  public static CurveFit fit(ResponseModel model, Points points) throws FitFailedException {
    if (points.size() <= model.parameterCount()) {
      throw tooFew(model.id(), model.parameterCount(), points.size());
    }
    if (model instanceof SeriesModel series
        && series.kind() == SeriesModel.Kind.POLYNOMIAL
        && !points.hasUncertainResponses()) {
      return PrecisePolynomialFit.fit(series, points);
    }
    return fit(model, points, model.start(points.responses(), points.hardnesses()));
  }

  /**
   * Fits a model from a given start.
   *
   * @param model bound model
   * @param points at least p + 1 points
   * @param start first parameters, length p
   * @return the fit
   * @throws FitFailedException if there is none from this start
   */
  public static CurveFit fit(ResponseModel model, Points points, double[] start)
      throws FitFailedException {
    int p = model.parameterCount();
    if (points.size() <= p) {
      throw tooFew(model.id(), p, points.size());
    }
    return reportable(iterate(new GaussNewton(model, points, start), model, 1e-15));
  }

  /**
   * Fits a model from a start close to its solution, as when only a variance has changed.
   *
   * <p>Stops at a relative step of 1e-7 instead of at rounding level. Q then stands to some 1e-14
   * and, convergence being by a factor of a hundred and more near the solution, β to some 1e-9.
   *
   * @param model bound model
   * @param points at least p + 1 points
   * @param start parameters close to the solution, length p
   * @return the fit
   * @throws FitFailedException if there is none from this start
   */
  public static CurveFit refit(ResponseModel model, Points points, double[] start)
      throws FitFailedException {
    return iterate(new GaussNewton(model, points, start), model, 1e-7);
  }

  private static CurveFit iterate(GaussNewton iteration, ResponseModel model, double enough)
      throws FitFailedException {
    double smallest = Double.POSITIVE_INFINITY;
    double latest = 0;
    int stalled = 0;
    int held = 0;
    for (int k = 1; k <= MAX_ITERATIONS; k++) {
      latest = iteration.advance();
      if (!Double.isFinite(latest)) {
        throw new FitFailedException(
            Reason.NOT_FINITE,
            "model " + model.id() + " left the range of numbers after " + k + " iterations");
      }
      // At rounding level steps stop shrinking; before that, each is below the smallest so far.
      boolean tiny = latest < ROUNDING_LEVEL || iteration.moved() < ROUNDING_MOVE;
      if (tiny && latest >= smallest && !iteration.wasDamped()) {
        stalled++;
      }
      if (latest <= enough || stalled >= 2) {
        held++;
        if (iteration.wasDamped() && held < LONGEST_HELD && iteration.offset() > LARGEST_OFFSET) {
          // Short because it was held back, not because the minimum is near.
          continue;
        }
        return finished(iteration, model, k);
      }
      smallest = Math.min(smallest, latest);
    }
    iteration.offset();
    requireDetermined(iteration.toFit(MAX_ITERATIONS));
    throw new FitFailedException(
        Reason.NOT_CONVERGED,
        "model "
            + model.id()
            + " did not settle in "
            + MAX_ITERATIONS
            + " iterations; the last step still changed a parameter by "
            + String.format(java.util.Locale.ROOT, "%.1e", latest)
            + " of its size");
  }

  private static void requireDetermined(CurveFit fit) throws FitFailedException {
    if (!(fit.conditionNumber() < WORST_CONDITION)) {
      throw illConditioned(fit.model(), fit.conditionNumber());
    }
  }

  private static CurveFit reportable(CurveFit fit) throws FitFailedException {
    ReportedCoefficients reported = fit.reported();
    double sum = 0;
    for (double value : reported.values()) {
      sum += value;
    }
    for (double value : reported.covariance()) {
      sum += value;
    }
    if (!Double.isFinite(sum)) {
      throw new FitFailedException(
          Reason.NOT_FINITE,
          "the coefficients of "
              + fit.model().id()
              + " in the response's own unit leave the range of numbers; take a larger or smaller"
              + " unit");
    }
    return fit;
  }

  private static CurveFit finished(GaussNewton iteration, ResponseModel model, int iterations)
      throws FitFailedException {
    double offset = iteration.offset();
    CurveFit fit = iteration.toFit(iterations);
    requireDetermined(fit);
    if (!(offset <= LARGEST_OFFSET)) {
      throw new FitFailedException(
          Reason.NOT_CONVERGED,
          "model "
              + model.id()
              + " stopped after "
              + iterations
              + " iterations where no step improves the fit, "
              + String.format(java.util.Locale.ROOT, "%.2g", offset)
              + " standard uncertainties away from a minimum");
    }
    return fit;
  }

  static FitFailedException illConditioned(ResponseModel model, double condition) {
    return new FitFailedException(
        Reason.ILL_CONDITIONED,
        "the points do not determine the "
            + model.parameterCount()
            + " parameters of "
            + model.id()
            + " (condition number "
            + String.format(java.util.Locale.ROOT, "%.1e", condition)
            + ")");
  }

  private static FitFailedException tooFew(String model, int p, int m) {
    return new FitFailedException(
        Reason.TOO_FEW_POINTS,
        m
            + (m == 1 ? " point" : " points")
            + " for the "
            + p
            + " parameters of "
            + model
            + "; at least "
            + (p + 1)
            + " are needed");
  }
}
