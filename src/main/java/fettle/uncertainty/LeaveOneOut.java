package fettle.uncertainty;

import fettle.fit.CurveFit;
import fettle.fit.CurveSolver;
import fettle.fit.FitFailedException;
import fettle.fit.FitSensitivity;
import fettle.fit.Points;
import fettle.fit.QuadraticForm;
import fettle.fit.ResponseModel;
import java.util.ArrayList;
import java.util.List;

/**
 * Each block predicted by the curve through the others, with τ re-estimated without it.
 *
 * <p>A wrong certificate inflates the τ estimated with it and so hides itself; without it, τ comes
 * from the blocks that agree. Errors shared by the block and the others cancel in the difference
 * and are removed: for a shared hardness effect c the error moves by g_βᵀ A c − c_i, for a shared
 * response effect z by g_βᵀ δβ + g′ z_i.
 *
 * <p><b>Cost:</b> m refits with their search for τ.
 */
public final class LeaveOneOut {
  private LeaveOneOut() {}

  /**
   * Predicts every block.
   *
   * @param model bound model
   * @param points points with stated uncertainties, at least p + 3 when τ is re-estimated, else p +
   *     2
   * @param scale what τ is measured against; null for no between-block scatter
   * @return one prediction a point, in order
   * @throws FitFailedException if a set of m − 1 points has no fit
   */
  public static List<PredictedBlock> predict(ResponseModel model, Points points, ScatterScale scale)
      throws FitFailedException {
    List<PredictedBlock> predictions = new ArrayList<>();
    // With m − 1 < p + 2 points there is no freedom left for τ; the stated uncertainties stand.
    Profile profile =
        scale != null && points.size() >= model.parameterCount() + 3
            ? Profile.of(model, points, scale)
            : null;
    double[] start =
        profile == null ? CurveSolver.fit(model, points).beta() : profile.atZero().beta();
    for (int i = 0; i < points.size(); i++) {
      predictions.add(predict(model, points, scale, profile, start, i));
    }
    return List.copyOf(predictions);
  }

  private static PredictedBlock predict(
      ResponseModel model,
      Points points,
      ScatterScale scale,
      Profile profile,
      double[] start,
      int left)
      throws FitFailedException {
    Points others = points.without(left);
    double tau = 0;
    CurveFit fit;
    Points seen = others;
    if (profile != null) {
      Profile rest = profile.without(left, start);
      tau = rest.maximise(true, Profile.COARSE);
      fit = rest.fitAt(tau);
      seen = others.withHardnessVariance(rest.variancesAt(tau));
    } else {
      fit = CurveSolver.refit(model, others, start);
    }
    double r = points.response(left);
    int p = model.parameterCount();
    double[] line = new double[p + 2];
    model.linearise(r, fit.beta(), line);
    double predicted = line[0];
    double slope = line[1];
    double variance = QuadraticForm.of(line, 2, fit.covariance(), p);
    FitSensitivity sensitivity = new FitSensitivity(fit, seen);
    for (int s = 0; s < points.hardnessEffectCount(); s++) {
      double[] effect = points.hardnessEffect(s);
      double own = effect[left];
      double moved = along(line, sensitivity.ofHardnessShift(without(effect, left)));
      // The curve's variance already holds moved²; replace it by the variance of the difference.
      variance += (moved - own) * (moved - own) - moved * moved;
    }
    for (int k = 0; k < points.responseEffectCount(); k++) {
      double[] effect = points.responseEffect(k);
      double moved = along(line, sensitivity.ofResponseShift(without(effect, left)));
      double own = slope * effect[left];
      variance += (moved + own) * (moved + own) - moved * moved;
    }
    variance += slope * slope * points.responseVariances()[left];
    variance += points.hardnessVariances()[left];
    if (scale != null) {
      double scatter = tau * scale.at(predicted);
      variance += scatter * scatter;
    }
    double uncertainty = Math.sqrt(variance);
    double error = predicted - points.hardness(left);
    return new PredictedBlock(
        left, predicted, error, uncertainty, error / uncertainty, outside(others, r));
  }

  private static double along(double[] line, double[] change) {
    double sum = 0;
    for (int k = 0; k < change.length; k++) {
      sum += line[2 + k] * change[k];
    }
    return sum;
  }

  private static double[] without(double[] values, int left) {
    double[] rest = new double[values.length - 1];
    System.arraycopy(values, 0, rest, 0, left);
    System.arraycopy(values, left + 1, rest, left, rest.length - left);
    return rest;
  }

  private static boolean outside(Points others, double r) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double response : others.responses()) {
      low = Math.min(low, response);
      high = Math.max(high, response);
    }
    return r < low || r > high;
  }

  /**
   * Root mean square of the errors.
   *
   * @param predictions predictions of all blocks
   * @return in the scale's unit
   */
  public static double rms(List<PredictedBlock> predictions) {
    double sum = 0;
    for (PredictedBlock block : predictions) {
      sum += block.error() * block.error();
    }
    return Math.sqrt(sum / predictions.size());
  }

  /**
   * Standard error of {@link #rms}, from the spread of the squared errors: sd(e²) / (2 rms √m).
   *
   * @param predictions predictions of at least two blocks
   * @return in the scale's unit
   */
  public static double standardErrorOfRms(List<PredictedBlock> predictions) {
    int m = predictions.size();
    double mean = 0;
    for (PredictedBlock block : predictions) {
      mean += block.error() * block.error() / m;
    }
    double sum = 0;
    for (PredictedBlock block : predictions) {
      double off = block.error() * block.error() - mean;
      sum += off * off;
    }
    return mean == 0 ? 0 : Math.sqrt(sum / (m - 1)) / (2 * Math.sqrt(mean) * Math.sqrt(m));
  }
}
