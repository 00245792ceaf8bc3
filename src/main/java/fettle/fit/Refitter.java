package fettle.fit;

import java.util.Arrays;

/**
 * Fits one model over and over to points that differ a little from a base set, as Monte Carlo does.
 *
 * <p><b>Method:</b> the iteration of {@link CurveSolver}, undamped, from the base fit, by normal
 * equations in the centred basis. Stops when a step moves β by less than 1e-6 of its own standard
 * uncertainty: a Monte Carlo draw needs no more. <b>Storage:</b> own; nothing is allocated in a
 * refit. One refitter, one thread. <b>Cost:</b> about three iterations of O(m (p + q)²).
 */
public final class Refitter {
  private static final int MAX_ITERATIONS = 60;

  /** Squared size of a step, in standard uncertainties, that ends the iteration. */
  private static final double SETTLED = 1e-12;

  private final ResponseModel model;
  private final Points base;
  private final double[] baseBeta;
  private final int m;
  private final int p;
  private final int hardnessEffects;
  private final int columns;
  private final double[] responseVariance;
  private final double[] hardnessVariance;
  private final double[][] effects;
  private final double[] normal;
  private final double[] step;
  private final double[] xi;
  private final double[][] lines;
  private final double[] row;
  private final double[] residual;
  private final double[] curvature;

  /**
   * A refitter.
   *
   * @param base points whose covariance all refits share
   * @param fit the fit of them, from which every refit starts
   */
  public Refitter(Points base, CurveFit fit) {
    this.model = fit.model();
    this.base = base;
    this.baseBeta = fit.beta().clone();
    this.m = base.size();
    this.p = model.parameterCount();
    this.hardnessEffects = base.hardnessEffectCount();
    this.columns = p + hardnessEffects + base.responseEffectCount();
    this.responseVariance = base.responseVariances();
    this.hardnessVariance = base.hardnessVariances();
    if (!base.hasUncertainties()) {
      Arrays.fill(hardnessVariance, 1);
    }
    this.effects = new double[columns - p][];
    for (int k = 0; k < columns - p; k++) {
      effects[k] =
          k < hardnessEffects ? base.hardnessEffect(k) : base.responseEffect(k - hardnessEffects);
    }
    this.normal = new double[columns * columns];
    this.step = new double[columns];
    this.xi = new double[m];
    this.lines = new double[m][p + 2];
    this.row = new double[columns];
    this.residual = new double[m];
    this.curvature = new double[p];
  }

  /**
   * Refits.
   *
   * @param responses length m
   * @param hardnesses length m
   * @param beta filled with the parameters, length p
   * @throws FitFailedException if the iteration does not settle or leaves the model's domain
   */
  public void refit(double[] responses, double[] hardnesses, double[] beta)
      throws FitFailedException {
    System.arraycopy(baseBeta, 0, beta, 0, p);
    System.arraycopy(responses, 0, xi, 0, m);
    for (int iteration = 0; iteration < MAX_ITERATIONS; iteration++) {
      assemble(responses, hardnesses, beta);
      for (int k = 0; k < p; k++) {
        curvature[k] = normal[k * columns + k];
      }
      if (Cholesky.decompose(normal, columns) == 0) {
        break;
      }
      Cholesky.solve(normal, columns, step);
      double size = 0;
      for (int k = 0; k < p; k++) {
        beta[k] += step[k];
        size += step[k] * step[k] * curvature[k];
      }
      if (size <= SETTLED) {
        return;
      }
      if (!Double.isFinite(size)) {
        break;
      }
      moveResponses(responses);
    }
    // The undamped iteration failed from the base fit: the damped one decides.
    CurveFit fit =
        CurveSolver.fit(
            model,
            Points.of(
                responses,
                hardnesses,
                responseVariance,
                hardnessVariance,
                Arrays.copyOfRange(effects, hardnessEffects, effects.length),
                Arrays.copyOfRange(effects, 0, hardnessEffects)),
            model.start(responses, hardnesses));
    System.arraycopy(fit.beta(), 0, beta, 0, p);
  }

  private void assemble(double[] responses, double[] hardnesses, double[] beta) {
    Arrays.fill(normal, 0);
    Arrays.fill(step, 0);
    for (int k = p; k < columns; k++) {
      normal[k * columns + k] = 1;
    }
    for (int i = 0; i < m; i++) {
      double[] line = lines[i];
      model.linearise(xi[i], beta, line);
      double slope = line[1];
      double f = hardnesses[i] - line[0] - slope * (responses[i] - xi[i]);
      residual[i] = f;
      double weight = 1 / (hardnessVariance[i] + slope * slope * responseVariance[i]);
      System.arraycopy(line, 2, row, 0, p);
      for (int k = p; k < columns; k++) {
        double effect = effects[k - p][i];
        row[k] = k - p < hardnessEffects ? effect : -slope * effect;
      }
      for (int j = 0; j < columns; j++) {
        double scaled = weight * row[j];
        step[j] += scaled * f;
        int at = j * columns;
        for (int k = 0; k <= j; k++) {
          normal[at + k] += scaled * row[k];
        }
      }
    }
  }

  private void moveResponses(double[] responses) {
    for (int i = 0; i < m; i++) {
      double[] line = lines[i];
      double slope = line[1];
      double rest = residual[i];
      double shift = 0;
      for (int k = 0; k < p; k++) {
        rest -= line[2 + k] * step[k];
      }
      for (int k = p; k < columns; k++) {
        double effect = effects[k - p][i] * step[k];
        if (k - p < hardnessEffects) {
          rest -= effect;
        } else {
          rest += slope * effect;
          shift += effect;
        }
      }
      double variance = responseVariance[i];
      xi[i] =
          responses[i]
              - shift
              + slope * variance / (hardnessVariance[i] + slope * slope * variance) * rest;
    }
  }
}
