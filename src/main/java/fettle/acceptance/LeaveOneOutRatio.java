package fettle.acceptance;

import fettle.calibration.CandidateFit;
import fettle.calibration.ChosenCurve;
import fettle.fit.Points;
import java.util.List;

/** A fit far better than its predictions follows its own blocks. */
final class LeaveOneOutRatio extends CurveCheck {
  private static final String ID = "leave-one-out-ratio";
  private static final CheckLimit REASON =
      new CheckLimit(ID, 2, CheckLimit.Unit.NUMBER, "ratio above which a reason is needed");
  private static final CheckLimit STOPS =
      new CheckLimit(
          ID + CheckLimit.STOP, 2.5, CheckLimit.Unit.NUMBER, "ratio above which the release stops");

  LeaveOneOutRatio() {
    super(
        new Statement(
            ID,
            Severity.STOPS_RELEASE,
            "Does the curve predict left-out blocks about as well as it fits all of them?",
            "Parameters that serve single blocks make the fit look better than the curve is.",
            "Choose a model with fewer parameters, or add blocks where single ones carry the curve.",
            COMMON_PRACTICE),
        REASON,
        STOPS);
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    Graded limits = Graded.of(evidence, REASON, STOPS);
    HardnessText text = HardnessText.of(evidence);
    CandidateFit fit = chosen.fit();
    Points points = evidence.analysis().points();
    double sum = 0;
    for (int i = 0; i < points.size(); i++) {
      double deviation = fit.chosen().fitted()[i] - points.hardness(i);
      sum += deviation * deviation;
    }
    double rms = Math.sqrt(sum / points.size());
    double ratio = rms == 0 ? 1 : fit.leaveOneOutRms() / rms;
    LimitInForce limit = limits.crossed(ratio);
    boolean passes = limits.passes(ratio);
    return List.of(
        (passes ? passed() : failed(limits.severityOf(ratio)))
            .judged(ratio, limit)
            .saying(
                "Left-out blocks are predicted to "
                    + text.size(fit.leaveOneOutRms())
                    + " (root mean square), all blocks fitted to "
                    + text.size(rms)
                    + ", a ratio of "
                    + Figure.measured(ratio, 2)
                    + ", "
                    + (passes ? "within the " : "above the ")
                    + limit.text()
                    + "."));
  }
}
