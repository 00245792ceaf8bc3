package fettle.acceptance;

import fettle.calibration.Candidate;
import fettle.calibration.CandidateFit;
import java.util.Optional;

/**
 * The fit by which blocks are judged: the chosen one, or where none was chosen the candidate that
 * predicts left-out blocks best. A wrong block may be the very reason why no model qualifies, so it
 * must be named then, too. Best is the smallest median of the absolute errors, which one or two
 * wrong blocks do not move.
 *
 * @param fit the fit
 * @param words how a finding names it
 */
record JudgedFit(CandidateFit fit, String words) {
  static final String NONE =
      "No candidate model could be fitted, so there is nothing to judge by; the candidates of"
          + " `fettle fit` say why.";

  static Optional<JudgedFit> of(Evidence evidence) {
    if (evidence.analysis().chosen().isPresent()) {
      CandidateFit chosen = evidence.analysis().chosen().get().fit();
      return Optional.of(new JudgedFit(chosen, "model " + chosen.model().id()));
    }
    CandidateFit best = null;
    for (Candidate candidate : evidence.analysis().candidates()) {
      if (candidate.fit().isPresent()
          && (best == null || medianError(candidate.fit().get()) < medianError(best))) {
        best = candidate.fit().get();
      }
    }
    return Optional.ofNullable(best)
        .map(
            fit ->
                new JudgedFit(
                    fit,
                    "model " + fit.model().id() + ", the best candidate as no curve was chosen"));
  }

  private static double medianError(CandidateFit fit) {
    double[] errors =
        fit.predicted().stream().mapToDouble(block -> Math.abs(block.error())).sorted().toArray();
    int middle = errors.length / 2;
    return errors.length % 2 == 1 ? errors[middle] : 0.5 * (errors[middle - 1] + errors[middle]);
  }
}
