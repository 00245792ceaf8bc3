package fettle.acceptance;

import fettle.calibration.Analysis;
import fettle.calibration.ChosenCurve;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** What checks answer, as outcome, severity and whole message. */
final class Answers {
  private Answers() {}

  /** All answers of a check but those that say that all is well. */
  static List<String> objections(Check check, SimulatedCampaign campaign) {
    return objections(check, campaign.evidence());
  }

  static List<String> objections(Check check, Evidence evidence) {
    return check.ask(evidence).stream()
        .filter(finding -> finding.outcome() != Outcome.PASSED)
        .map(Answers::text)
        .toList();
  }

  static String text(Finding finding) {
    return finding.outcome() + ", " + finding.severity().text() + ": " + finding.message();
  }

  /** The good campaign's evidence with its chosen curve altered, as a kept draft may be. */
  static Evidence altered(UnaryOperator<ChosenCurve> change) {
    Evidence good = SimulatedCampaign.goodEvidence();
    Analysis analysis = good.analysis();
    ChosenCurve chosen = change.apply(analysis.chosen().orElseThrow());
    return new Evidence(With.component(analysis, "chosen", Optional.of(chosen)), good.assessedOn());
  }
}
