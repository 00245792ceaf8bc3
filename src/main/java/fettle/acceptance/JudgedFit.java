package fettle.acceptance;

import fettle.calibration.Candidate;
import fettle.calibration.CandidateFit;
import java.util.Optional;

/**
 * The fit by which blocks are judged: the chosen one, or where none was chosen the candidate that
 * predicts left-out blocks best. A wrong block may be the very reason why no model qualifies, so it
 * must be named then, too.
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
          && (best == null || candidate.fit().get().leaveOneOutRms() < best.leaveOneOutRms())) {
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
}
