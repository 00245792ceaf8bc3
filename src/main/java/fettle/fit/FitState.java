package fettle.fit;

import java.util.Arrays;
import java.util.Optional;

/**
 * A point of the search for the smallest Q: parameters, responses, shared effects, and the model
 * linearised there.
 *
 * <p>Columns of the linear system: shared hardness effects η, shared response effects ζ, then the
 * change of β. Rows: one a point, whitened by its effective standard deviation; one an effect,
 * which holds it to unit variance; one a parameter while damping.
 */
final class FitState {
  /** Share of a parameter's natural size below which changes count as absolute. */
  private static final double SMALL_PARAMETER = 1e-5;

  final ResponseModel model;
  final Points points;
  final int m;
  final int p;
  final int hardnessEffects;
  final int effects;
  final double[] beta;
  final double[] xi;
  final double[] shared;
  final double[][] lines;
  final HouseholderLeastSquares system;

  private double q;
  private final boolean stated;
  private final double size;
  private final double[] longest;

  FitState(ResponseModel model, Points points, double[] start) {
    this.model = model;
    this.points = points;
    this.m = points.size();
    this.p = model.parameterCount();
    this.hardnessEffects = points.hardnessEffectCount();
    this.effects = hardnessEffects + points.responseEffectCount();
    this.stated = points.hasUncertainties();
    this.lines = new double[m][p + 2];
    this.system = new HouseholderLeastSquares(m + effects + p, effects + p);
    this.beta = start.clone();
    this.xi = points.responses();
    this.shared = new double[effects];
    this.longest = new double[p];
    this.size = sizeOfData();
    this.q = distance(beta, xi, shared);
  }

  void requireFinite() throws FitFailedException {
    if (!Double.isFinite(q)) {
      throw new FitFailedException(
          FitFailedException.Reason.NOT_FINITE,
          "model " + model.id() + " is not finite at its start");
    }
  }

  private double sizeOfData() {
    double sum = 0;
    for (int i = 0; i < m; i++) {
      sum += points.hardness(i) * points.hardness(i) / hardnessVariance(i);
      if (points.responseVariance(i) > 0) {
        sum += points.response(i) * points.response(i) / points.responseVariance(i);
      }
    }
    return sum;
  }

  private double hardnessVariance(int i) {
    return stated ? points.hardnessVariance(i) : 1;
  }

  double effectiveVariance(int i) {
    double slope = lines[i][1];
    return hardnessVariance(i) + slope * slope * points.responseVariance(i);
  }

  /** One standard deviation of a whitened residual: as stated, or s where it is estimated. */
  double unit() {
    return stated ? 1 : Math.max(Math.sqrt(q / (m - p)), Double.MIN_NORMAL);
  }

  /** What rounding alone may add to Q: residuals are differences of numbers of the data's size. */
  double noise() {
    return 1e-13 * q + 1e-30 * size + 4 * Math.ulp(1.0) * Math.sqrt(q * size);
  }

  /** What rounding alone may make of a whitened step. */
  double noiseOfStep() {
    return 100 * p * Math.ulp(1.0) * Math.sqrt(size);
  }

  /** Q here. */
  double q() {
    return q;
  }

  void moveTo(double[] parameters, double[] responses, double[] sharedEffects, double distance) {
    System.arraycopy(parameters, 0, beta, 0, p);
    System.arraycopy(responses, 0, xi, 0, m);
    System.arraycopy(sharedEffects, 0, shared, 0, effects);
    q = distance;
  }

  /** Q elsewhere. */
  double distance(double[] parameters, double[] responses, double[] sharedEffects) {
    double sum = 0;
    for (double effect : sharedEffects) {
      sum += effect * effect;
    }
    for (int i = 0; i < m; i++) {
      double error = points.hardness(i) - model.value(responses[i], parameters);
      for (int k = 0; k < hardnessEffects; k++) {
        error -= points.hardnessEffect(k, i) * sharedEffects[k];
      }
      sum += error * error / hardnessVariance(i);
      double variance = points.responseVariance(i);
      if (variance > 0) {
        double shift = points.response(i) - sharedShift(sharedEffects, i) - responses[i];
        sum += shift * shift / variance;
      }
    }
    return sum;
  }

  double sharedShift(double[] sharedEffects, int i) {
    double shift = 0;
    for (int k = hardnessEffects; k < effects; k++) {
      shift += points.responseEffect(k - hardnessEffects, i) * sharedEffects[k];
    }
    return shift;
  }

  void linearise() {
    for (int i = 0; i < m; i++) {
      model.linearise(xi[i], beta, lines[i]);
    }
    for (int k = 0; k < p; k++) {
      double square = 0;
      for (int i = 0; i < m; i++) {
        square += lines[i][2 + k] * lines[i][2 + k] / effectiveVariance(i);
      }
      longest[k] = Math.max(longest[k], square);
    }
  }

  /**
   * Builds the linear system.
   *
   * @param damping share of each parameter's longest column so far that holds it (J. J. Moré, in
   *     Lecture Notes in Mathematics 630 (1978) 105): so a parameter that has lost its influence
   *     stays held
   */
  void assemble(double damping) {
    system.clear();
    for (int i = 0; i < m; i++) {
      double[] line = lines[i];
      double weight = 1 / Math.sqrt(effectiveVariance(i));
      int row = system.addRow();
      for (int k = 0; k < hardnessEffects; k++) {
        system.set(row, k, weight * points.hardnessEffect(k, i));
      }
      for (int k = hardnessEffects; k < effects; k++) {
        system.set(row, k, -weight * line[1] * points.responseEffect(k - hardnessEffects, i));
      }
      for (int k = 0; k < p; k++) {
        system.set(row, effects + k, weight * line[2 + k]);
      }
      system.setRightHandSide(row, weight * residual(i));
    }
    for (int k = 0; k < effects; k++) {
      system.set(system.addRow(), k, 1);
    }
    if (damping > 0) {
      for (int k = 0; k < p; k++) {
        system.set(system.addRow(), effects + k, Math.sqrt(damping * longest[k]));
      }
    }
  }

  /** Residual of a point along hardness, its response moved back to the observed one. */
  double residual(int i) {
    return points.hardness(i) - lines[i][0] - lines[i][1] * (points.response(i) - xi[i]);
  }

  /**
   * Largest change of a parameter against its size, or against what moves the curve by itself.
   *
   * @param other other parameters
   */
  double relativeChange(double[] other) {
    double sum = 0;
    double[] squares = new double[p];
    for (int i = 0; i < m; i++) {
      double variance = effectiveVariance(i);
      sum += lines[i][0] * lines[i][0] / variance;
      for (int k = 0; k < p; k++) {
        squares[k] += lines[i][2 + k] * lines[i][2 + k] / variance;
      }
    }
    double largest = 0;
    for (int k = 0; k < p; k++) {
      double change = Math.abs(other[k] - beta[k]);
      if (change > 0) {
        double natural = squares[k] > 0 ? Math.sqrt(sum / squares[k]) : 0;
        largest = Math.max(largest, change / (Math.abs(other[k]) + SMALL_PARAMETER * natural));
      }
    }
    return largest;
  }

  /**
   * How far other parameters are: √(δβᵀ JᵀV⁻¹J δβ), shared effects held.
   *
   * @param other other parameters
   */
  double whitenedDistance(double[] other) {
    double sum = 0;
    for (int i = 0; i < m; i++) {
      double along = 0;
      for (int k = 0; k < p; k++) {
        along += lines[i][2 + k] * (other[k] - beta[k]);
      }
      sum += along * along / effectiveVariance(i);
    }
    return Math.sqrt(sum);
  }

  /** Factors the undamped system at a finished fit, for sensitivities. */
  static HouseholderLeastSquares factored(CurveFit fit, Points points) throws FitFailedException {
    FitState state = new FitState(fit.model(), points, fit.beta());
    state.requireFinite();
    System.arraycopy(fit.adjustedResponses(), 0, state.xi, 0, state.m);
    state.linearise();
    state.assemble(0);
    state.system.factor();
    return state.system;
  }

  /** The fit here, from the undamped system as it has been factored. */
  CurveFit toFit(int iterations) throws FitFailedException {
    double[] covariance = system.trailingCovariance(p);
    double[] fitted = new double[m];
    double[] slopes = new double[m];
    double[] variances = new double[m];
    double[] line = new double[p + 2];
    double logVariances = 0;
    for (int i = 0; i < m; i++) {
      model.linearise(points.response(i), beta, line);
      fitted[i] = line[0];
      slopes[i] = lines[i][1];
      variances[i] = effectiveVariance(i);
      logVariances += StrictMath.log(variances[i]);
    }
    int degrees = m - p;
    if (!stated) {
      double s2 = q / degrees;
      for (int k = 0; k < covariance.length; k++) {
        covariance[k] *= s2;
      }
    }
    for (double element : covariance) {
      if (!Double.isFinite(element)) {
        throw CurveSolver.illConditioned(model, Double.POSITIVE_INFINITY);
      }
    }
    return new CurveFit(
        model,
        beta.clone(),
        covariance,
        Optional.empty(),
        q,
        degrees,
        Arrays.copyOf(xi, m),
        fitted,
        slopes,
        variances,
        logVariances + system.logDeterminant(),
        logVariances + system.logDeterminantOfLeading(effects),
        system.trailingCondition(p),
        iterations,
        stated);
  }
}
