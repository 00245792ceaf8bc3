package fettle.fit;

import fettle.fit.FitFailedException.Reason;
import java.util.Arrays;
import java.util.Optional;

/**
 * One fit in progress: the state of {@link CurveSolver}'s iteration.
 *
 * <p>Columns of the linear system: shared hardness effects η, shared response effects ζ, then the
 * change of β. Rows: one a point, whitened by its effective standard deviation; one an effect,
 * which holds it to unit variance; one a parameter while damping.
 */
final class GaussNewton {
  private static final double FIRST_DAMPING = 1e-3;
  private static final double LARGEST_DAMPING = 1e8;

  /** Share of a parameter's natural size below which changes count as absolute. */
  private static final double SMALL_PARAMETER = 1e-5;

  private final ResponseModel model;
  private final Points points;
  private final int m;
  private final int p;
  private final int hardnessEffects;
  private final int effects;
  private final boolean stated;
  private final double[][] lines;
  private final HouseholderLeastSquares system;
  private final double[] solution;
  private final double floor;

  private double[] beta;
  private double[] xi;
  private double[] shared;
  private double q;
  private double damping;

  private final double[] trialBeta;
  private final double[] trialXi;
  private final double[] trialShared;
  private final double[] trialLine;

  GaussNewton(ResponseModel model, Points points, double[] start) throws FitFailedException {
    this.model = model;
    this.points = points;
    this.m = points.size();
    this.p = model.parameterCount();
    this.hardnessEffects = points.hardnessEffectCount();
    this.effects = hardnessEffects + points.responseEffectCount();
    this.stated = points.hasUncertainties();
    this.lines = new double[m][p + 2];
    this.system = new HouseholderLeastSquares(m + effects + p, effects + p);
    this.solution = new double[effects + p];
    this.beta = start.clone();
    this.xi = points.responses();
    this.shared = new double[effects];
    this.trialBeta = new double[p];
    this.trialXi = new double[m];
    this.trialShared = new double[effects];
    this.trialLine = new double[p + 2];
    double size = 0;
    for (int i = 0; i < m; i++) {
      size += points.hardness(i) * points.hardness(i) / hardnessVariance(i);
    }
    this.floor = 1e-30 * size;
    this.q = distance(beta, xi, shared);
    if (!Double.isFinite(q)) {
      throw new FitFailedException(
          Reason.NOT_FINITE, "model " + model.id() + " is not finite at its start");
    }
  }

  private double hardnessVariance(int i) {
    return stated ? points.hardnessVariance(i) : 1;
  }

  /** Q at a state. */
  private double distance(double[] parameters, double[] responses, double[] sharedEffects) {
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

  private double sharedShift(double[] sharedEffects, int i) {
    double shift = 0;
    for (int k = hardnessEffects; k < effects; k++) {
      shift += points.responseEffect(k - hardnessEffects, i) * sharedEffects[k];
    }
    return shift;
  }

  /**
   * One accepted step.
   *
   * @return the largest relative change of a parameter; NaN where the model left the range of
   *     numbers; 0 where no step lowers Q any more
   */
  double advance() throws FitFailedException {
    for (int i = 0; i < m; i++) {
      model.linearise(xi[i], beta, lines[i]);
    }
    double fraction = 1;
    for (int attempt = 0; attempt < 80; attempt++) {
      assemble(damping);
      system.factor();
      system.solve(solution);
      for (double x : solution) {
        if (!Double.isFinite(x)) {
          if (damping == 0) {
            throw CurveSolver.illConditioned(model, Double.POSITIVE_INFINITY);
          }
          return Double.NaN;
        }
      }
      propose(fraction);
      double trial = distance(trialBeta, trialXi, trialShared);
      if (trial <= q * (1 + 1e-13) + floor) {
        double step = relativeStep();
        accept(trial);
        damping = damping > 1e-9 ? damping / 10 : 0;
        return step;
      }
      if (damping < LARGEST_DAMPING) {
        damping = damping == 0 ? FIRST_DAMPING : damping * 10;
      } else {
        fraction *= 0.25;
      }
    }
    damping = 0;
    return 0;
  }

  private void assemble(double mu) {
    system.clear();
    double[] squares = new double[p];
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
        double element = weight * line[2 + k];
        system.set(row, effects + k, element);
        squares[k] += element * element;
      }
      double residual = points.hardness(i) - line[0] - line[1] * (points.response(i) - xi[i]);
      system.setRightHandSide(row, weight * residual);
    }
    for (int k = 0; k < effects; k++) {
      system.set(system.addRow(), k, 1);
    }
    if (mu > 0) {
      for (int k = 0; k < p; k++) {
        system.set(system.addRow(), effects + k, Math.sqrt(mu * squares[k]));
      }
    }
  }

  private double effectiveVariance(int i) {
    double slope = lines[i][1];
    return hardnessVariance(i) + slope * slope * points.responseVariance(i);
  }

  private void propose(double fraction) {
    for (int k = 0; k < p; k++) {
      trialBeta[k] = beta[k] + fraction * solution[effects + k];
    }
    for (int k = 0; k < effects; k++) {
      trialShared[k] = shared[k] + fraction * (solution[k] - shared[k]);
    }
    for (int i = 0; i < m; i++) {
      double[] line = lines[i];
      double target = points.response(i) - sharedShift(solution, i);
      double variance = points.responseVariance(i);
      if (variance > 0) {
        double residual = points.hardness(i) - line[0] - line[1] * (points.response(i) - xi[i]);
        for (int k = 0; k < hardnessEffects; k++) {
          residual -= points.hardnessEffect(k, i) * solution[k];
        }
        for (int k = hardnessEffects; k < effects; k++) {
          residual += line[1] * points.responseEffect(k - hardnessEffects, i) * solution[k];
        }
        for (int k = 0; k < p; k++) {
          residual -= line[2 + k] * solution[effects + k];
        }
        target += line[1] * variance / effectiveVariance(i) * residual;
      }
      trialXi[i] = xi[i] + fraction * (target - xi[i]);
    }
  }

  /** Largest change of a parameter against its size, or against what moves the curve by itself. */
  private double relativeStep() {
    double size = 0;
    double[] squares = new double[p];
    for (int i = 0; i < m; i++) {
      double variance = effectiveVariance(i);
      size += lines[i][0] * lines[i][0] / variance;
      for (int k = 0; k < p; k++) {
        squares[k] += lines[i][2 + k] * lines[i][2 + k] / variance;
      }
    }
    double largest = 0;
    for (int k = 0; k < p; k++) {
      double natural = Math.sqrt(size / squares[k]);
      double change = Math.abs(trialBeta[k] - beta[k]);
      largest = Math.max(largest, change / (Math.abs(trialBeta[k]) + SMALL_PARAMETER * natural));
    }
    return largest;
  }

  private void accept(double trial) {
    System.arraycopy(trialBeta, 0, beta, 0, p);
    System.arraycopy(trialXi, 0, xi, 0, m);
    System.arraycopy(trialShared, 0, shared, 0, effects);
    q = trial;
  }

  /** Factors the undamped system at a finished fit, for sensitivities. */
  static HouseholderLeastSquares factored(CurveFit fit, Points points) throws FitFailedException {
    GaussNewton state = new GaussNewton(fit.model(), points, fit.beta());
    state.xi = fit.adjustedResponses();
    for (int i = 0; i < state.m; i++) {
      state.model.linearise(state.xi[i], state.beta, state.lines[i]);
    }
    state.assemble(0);
    state.system.factor();
    return state.system;
  }

  /** The fit at the present state. */
  CurveFit toFit(int iterations) throws FitFailedException {
    for (int i = 0; i < m; i++) {
      model.linearise(xi[i], beta, lines[i]);
    }
    assemble(0);
    system.factor();
    double[] covariance = system.trailingCovariance(p);
    double condition = system.trailingCondition(p);
    double[] fitted = new double[m];
    double[] slopes = new double[m];
    double[] variances = new double[m];
    double logVariances = 0;
    for (int i = 0; i < m; i++) {
      model.linearise(points.response(i), beta, trialLine);
      fitted[i] = trialLine[0];
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
        condition,
        iterations,
        stated);
  }
}
