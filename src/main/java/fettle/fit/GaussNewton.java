package fettle.fit;

/**
 * The iteration of {@link CurveSolver}: Gauss–Newton steps, bent along the model's curvature, held
 * back where they would raise Q or where the model bends too much for its linear form.
 */
final class GaussNewton {
  private static final double SHORTEST_FRACTION = 1e-6;

  /** Steps that change every parameter by less than this share are straight enough as they are. */
  private static final double STRAIGHT = 1e-3;

  /** Share of a step at which its curvature is felt. */
  private static final double PROBE = 0.1;

  /** Largest bend of a parameter's step against the step and the parameter itself. */
  private static final double LARGEST_BEND = 0.375;

  private final FitState state;
  private final int p;
  private final int effects;
  private final Damping damping = new Damping();
  private final FitStep step;
  private final FitStep bend;
  private final double[] trialBeta;
  private final double[] trialXi;
  private final double[] trialShared;
  private boolean damped;
  private double moved;

  GaussNewton(ResponseModel model, Points points, double[] start) throws FitFailedException {
    this.state = new FitState(model, points, start);
    state.requireFinite();
    this.p = state.p;
    this.effects = state.effects;
    this.step = new FitStep(state.m, p, effects);
    this.bend = new FitStep(state.m, p, effects);
    this.trialBeta = new double[p];
    this.trialXi = new double[state.m];
    this.trialShared = new double[effects];
  }

  /**
   * One accepted step.
   *
   * @return the largest relative change of a parameter, a response or a shared effect; NaN where
   *     the model left the range of numbers; 0 where no step lowers Q any more
   */
  double advance() {
    state.linearise();
    double fraction = 1;
    while (fraction > SHORTEST_FRACTION) {
      if (solve(damping.value()) && bendsLittle()) {
        propose(fraction);
        double trial = state.distance(trialBeta, trialXi, trialShared);
        if (trial <= state.q() + state.noise()) {
          double change = Math.max(state.relativeChange(trialBeta), otherChange());
          moved = state.whitenedDistance(trialBeta) / state.unit();
          state.moveTo(trialBeta, trialXi, trialShared, trial);
          damped = damping.value() > 0;
          damping.loosen();
          return change;
        }
      }
      if (!damping.tighten()) {
        if (!step.isFinite()) {
          return Double.NaN;
        }
        fraction *= 0.25;
      }
    }
    damping.release();
    damped = false;
    moved = 0;
    return 0;
  }

  /** Whether the last step was held back, and so says nothing about how far the minimum is. */
  boolean wasDamped() {
    return damped;
  }

  /** Length of the last step of β in its own standard uncertainties. */
  double moved() {
    return moved;
  }

  /**
   * What is left to the minimum: the length of the undamped step in standard uncertainties beyond
   * what rounding makes of it (D. M. Bates, D. G. Watts, Technometrics 23 (1981) 179: relative
   * offset). Infinite where the parameters are not determined here.
   */
  double offset() {
    state.linearise();
    if (!solve(0)) {
      return Double.POSITIVE_INFINITY;
    }
    for (int k = 0; k < p; k++) {
      trialBeta[k] = state.beta[k] + step.solution[effects + k];
    }
    return Math.max(0, state.whitenedDistance(trialBeta) - state.noiseOfStep()) / state.unit();
  }

  /** The fit here; call {@link #offset} before. */
  CurveFit toFit(int iterations) throws FitFailedException {
    return state.toFit(iterations);
  }

  private boolean solve(double held) {
    state.assemble(held);
    state.system.factor();
    state.system.solve(step.solution);
    if (!step.isFinite()) {
      return false;
    }
    for (int k = 0; k < effects; k++) {
      step.shared[k] = step.solution[k] - state.shared[k];
    }
    for (int i = 0; i < state.m; i++) {
      step.residual[i] = state.residual(i);
      double back = state.points.response(i) - state.xi[i];
      step.responses[i] = back + responseChange(step, i);
    }
    return true;
  }

  /** Where a point's response goes when shared effects and β go as solved. */
  private double responseChange(FitStep one, int i) {
    double[] line = state.lines[i];
    double slope = line[1];
    double shift = state.sharedShift(one.solution, i);
    double variance = state.points.responseVariance(i);
    if (variance == 0) {
      return -shift;
    }
    double rest = one.residual[i] + slope * shift;
    for (int k = 0; k < state.hardnessEffects; k++) {
      rest -= state.points.hardnessEffect(k, i) * one.solution[k];
    }
    for (int k = 0; k < p; k++) {
      rest -= line[2 + k] * one.solution[effects + k];
    }
    return slope * variance / state.effectiveVariance(i) * rest - shift;
  }

  /**
   * Bends the step along the curvature of the model, whose second derivative along the step comes
   * from a difference.
   *
   * @return false where the model bends so much over the step that its linear form means nothing
   * @see "M. K. Transtrum, B. B. Machta, J. P. Sethna, Why are nonlinear fits to data so
   *     challenging?, Phys. Rev. Lett. 104 (2010) 060201: geodesic acceleration"
   */
  private boolean bendsLittle() {
    bend.clear();
    for (int k = 0; k < p; k++) {
      trialBeta[k] = state.beta[k] + step.solution[effects + k];
    }
    if (state.relativeChange(trialBeta) < STRAIGHT) {
      return true;
    }
    for (int k = 0; k < p; k++) {
      trialBeta[k] = state.beta[k] + PROBE * step.solution[effects + k];
    }
    double[] right = new double[state.system.rows()];
    for (int i = 0; i < state.m; i++) {
      double[] line = state.lines[i];
      double along = line[1] * step.responses[i];
      for (int k = 0; k < p; k++) {
        along += line[2 + k] * step.solution[effects + k];
      }
      double value = state.model.value(state.xi[i] + PROBE * step.responses[i], trialBeta);
      bend.residual[i] = -((value - line[0]) / PROBE - along) / PROBE;
      right[i] = bend.residual[i] / Math.sqrt(state.effectiveVariance(i));
    }
    state.system.solve(right, bend.solution);
    if (!bend.isFinite()) {
      return false;
    }
    for (int k = 0; k < p; k++) {
      double allowed = Math.abs(step.solution[effects + k]) + Math.abs(state.beta[k]);
      if (Math.abs(bend.solution[effects + k]) > LARGEST_BEND * allowed) {
        return false;
      }
    }
    System.arraycopy(bend.solution, 0, bend.shared, 0, effects);
    for (int i = 0; i < state.m; i++) {
      bend.responses[i] = responseChange(bend, i);
    }
    return true;
  }

  private void propose(double fraction) {
    double square = fraction * fraction;
    for (int k = 0; k < p; k++) {
      trialBeta[k] =
          state.beta[k]
              + fraction * step.solution[effects + k]
              + square * bend.solution[effects + k];
    }
    for (int k = 0; k < effects; k++) {
      trialShared[k] = state.shared[k] + fraction * step.shared[k] + square * bend.shared[k];
    }
    for (int i = 0; i < state.m; i++) {
      trialXi[i] = state.xi[i] + fraction * step.responses[i] + square * bend.responses[i];
    }
  }

  /**
   * Largest change of a response against the largest response, and of a shared effect against its
   * size or unit. β alone does not tell: from an ordinary fit of equally uncertain points the first
   * step moves only the responses.
   */
  private double otherChange() {
    double size = Double.MIN_NORMAL;
    double largest = 0;
    for (int i = 0; i < state.m; i++) {
      size = Math.max(size, Math.abs(state.points.response(i)));
      largest = Math.max(largest, Math.abs(trialXi[i] - state.xi[i]));
    }
    largest /= size;
    for (int k = 0; k < effects; k++) {
      double change = Math.abs(trialShared[k] - state.shared[k]);
      largest = Math.max(largest, change / (1 + Math.abs(trialShared[k])));
    }
    return largest;
  }
}
