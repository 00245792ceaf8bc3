package fettle.fit;

import java.util.Arrays;

/** One proposed step of {@link GaussNewton}: what it does to every unknown. */
final class FitStep {
  /** Shared effects, then the change of β, as the linear system gives them. */
  final double[] solution;

  /** Change of the shared effects. */
  final double[] shared;

  /** Change of the responses ξ. */
  final double[] responses;

  /** What each point's hardness asks of the step. */
  final double[] residual;

  FitStep(int points, int parameters, int effects) {
    this.solution = new double[effects + parameters];
    this.shared = new double[effects];
    this.responses = new double[points];
    this.residual = new double[points];
  }

  void clear() {
    Arrays.fill(solution, 0);
    Arrays.fill(shared, 0);
    Arrays.fill(responses, 0);
  }

  boolean isFinite() {
    for (double x : solution) {
      if (!Double.isFinite(x)) {
        return false;
      }
    }
    return true;
  }
}
