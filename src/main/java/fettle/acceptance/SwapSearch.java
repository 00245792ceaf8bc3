package fettle.acceptance;

import fettle.calibration.Analysis;
import fettle.calibration.CandidateFit;
import fettle.fit.FitFailedException;
import fettle.fit.Points;
import fettle.uncertainty.BetweenBlockScatter;
import fettle.uncertainty.LeaveOneOut;
import fettle.uncertainty.PredictedBlock;
import java.util.List;
import java.util.Optional;

/** Tries whether exchanging the certified values of two blocks makes them agree with the others. */
record SwapSearch(Points points, CandidateFit fit) {
  /** Within this many standard uncertainties an exchanged block agrees. */
  private static final double AGREES = 2;

  /** An exchange that explains the scatter brings it to less than this share of what it was. */
  private static final double EXPLAINED = 0.5;

  /**
   * Two blocks by their index among the fitting blocks.
   *
   * @param first one block
   * @param second the other
   * @param tau between-block scatter after the exchange
   */
  record Pair(int first, int second, double tau) {}

  static SwapSearch of(Analysis analysis, CandidateFit fit) {
    return new SwapSearch(analysis.points(), fit);
  }

  /** The pair whose exchange lowers the scatter most, if it lowers it to less than half. */
  Optional<Pair> bestPair() {
    Pair best = null;
    for (int i = 0; i < points.size(); i++) {
      for (int j = i + 1; j < points.size(); j++) {
        Optional<Double> tau = scatterAfter(i, j);
        if (tau.isPresent()
            && tau.get() < EXPLAINED * fit.scatter().restricted()
            && (best == null || tau.get() < best.tau())) {
          best = new Pair(i, j, tau.get());
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private Optional<Double> scatterAfter(int i, int j) {
    try {
      return Optional.of(
          BetweenBlockScatter.of(fit.model(), exchanged(i, j), fit.scatter().scale()).restricted());
    } catch (FitFailedException noFit) {
      // Exchanged values that admit no fit explain nothing.
      return Optional.empty();
    }
  }

  /**
   * The block with which block i looks swapped: with the two certified values exchanged both agree
   * with the others, and the scatter between blocks is less than half of what it was. The second
   * condition keeps a gross error from hiding in the scatter that it causes itself.
   */
  Optional<Integer> partnerOf(int i) {
    Pair best = null;
    for (int j = 0; j < points.size(); j++) {
      Optional<Double> tau = j == i ? Optional.empty() : scatterAfter(i, j);
      if (tau.isPresent()
          && tau.get() <= EXPLAINED * fit.scatter().restricted()
          && (best == null || tau.get() < best.tau())
          && bothAgree(i, j)) {
        best = new Pair(i, j, tau.get());
      }
    }
    return best == null ? Optional.empty() : Optional.of(best.second());
  }

  private boolean bothAgree(int i, int j) {
    try {
      List<PredictedBlock> predicted =
          LeaveOneOut.predict(fit.model(), exchanged(i, j), fit.scatter().scale());
      return Math.abs(predicted.get(i).z()) < AGREES && Math.abs(predicted.get(j).z()) < AGREES;
    } catch (FitFailedException noFit) {
      return false;
    }
  }

  private Points exchanged(int i, int j) throws FitFailedException {
    double[][] effects = new double[points.hardnessEffectCount()][];
    for (int s = 0; s < effects.length; s++) {
      effects[s] = exchanged(points.hardnessEffect(s), i, j);
    }
    double[][] runs = new double[points.responseEffectCount()][];
    for (int k = 0; k < runs.length; k++) {
      runs[k] = points.responseEffect(k);
    }
    return Points.of(
        points.responses(),
        exchanged(points.hardnesses(), i, j),
        points.responseVariances(),
        exchanged(points.hardnessVariances(), i, j),
        runs,
        effects);
  }

  private static double[] exchanged(double[] values, int i, int j) {
    double[] result = values.clone();
    result[i] = values[j];
    result[j] = values[i];
    return result;
  }
}
