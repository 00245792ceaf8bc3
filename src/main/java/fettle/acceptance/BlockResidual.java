package fettle.acceptance;

import fettle.calibration.BlockResponse;
import fettle.fit.CurveFit;
import fettle.fit.Points;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Residuals of the fit that trusts the stated uncertainties alone, τ = 0. */
final class BlockResidual extends StatedCheck {
  private static final String ID = "block-residual";
  private static final CheckLimit REASON =
      new CheckLimit(
          ID, 2.5, CheckLimit.Unit.NUMBER, "standardised residual above which a reason is needed");
  private static final CheckLimit STOPS =
      new CheckLimit(
          ID + CheckLimit.STOP,
          4,
          CheckLimit.Unit.NUMBER,
          "standardised residual above which the release stops");

  BlockResidual() {
    super(
        new Statement(
            ID,
            Severity.STOPS_RELEASE,
            "Does every block lie on the curve within its stated uncertainties?",
            "With the between-block scatter set to zero nothing hides a block that disagrees with"
                + " its own certificate.",
            "Check certificate, mark and readings of the block; a reason may be that the alloy's"
                + " own scatter, estimated and in the budget, explains it.",
            COMMON_PRACTICE),
        REASON,
        STOPS);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    Optional<JudgedFit> judged = JudgedFit.of(evidence);
    if (judged.isEmpty()) {
      return List.of(missing().saying(JudgedFit.NONE));
    }
    Graded limits = Graded.of(evidence, REASON, STOPS);
    HardnessText text = HardnessText.of(evidence);
    CurveFit fit = judged.get().fit().scatter().atZero();
    Points points = evidence.analysis().points();
    List<Finding> findings = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      BlockResponse block = evidence.analysis().fittingBlocks().get(i);
      double residual = fit.fitted()[i] - points.hardness(i);
      double u = Math.sqrt(fit.effectiveVariances()[i]);
      double size = Math.abs(residual) / u;
      LimitInForce limit = limits.crossed(size);
      boolean passes = limits.passes(size);
      findings.add(
          (passes ? passed() : failed(limits.severityOf(size)))
              .judged(size, limit)
              .on(block)
              .saying(
                  text.block(block)
                      + " lies "
                      + text.difference(-residual, points.hardness(i))
                      + " off the curve ("
                      + judged.get().words()
                      + ", τ = 0), "
                      + Figure.measured(size, 2)
                      + " of its standard uncertainties of "
                      + text.size(u)
                      + ", "
                      + (passes ? "within the " : "above the ")
                      + limit.text()
                      + "."));
    }
    return findings;
  }
}
