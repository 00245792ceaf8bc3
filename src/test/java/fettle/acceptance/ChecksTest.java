package fettle.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import fettle.policy.Policy;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for all checks together. */
class ChecksTest {
  static Stream<Check> checks() {
    return Checks.all().stream();
  }

  @ParameterizedTest
  @MethodSource("checks")
  void passesAGoodCampaign(Check check) {
    List<Finding> findings = check.ask(SimulatedCampaign.goodEvidence());
    assertThat(findings).isNotEmpty();
    assertThat(findings)
        .allSatisfy(
            finding -> {
              assertThat(finding.outcome()).as(finding.message()).isEqualTo(Outcome.PASSED);
              assertThat(finding.checkId()).isEqualTo(check.id());
              assertThat(finding.message()).endsWith(".").doesNotContain("not a number");
            });
  }

  @Test
  void givesAGoodCampaignAPass() {
    List<Finding> findings = Checks.ask(SimulatedCampaign.goodEvidence());
    assertThat(Verdict.of(findings)).isEqualTo(Verdict.PASS);
  }

  @Test
  void saysThatDataAreMissingWhereThereIsNoCurve() {
    Evidence evidence = SimulatedCampaign.unsettled().evidence();
    assertThat(evidence.analysis().chosen()).isEmpty();
    for (Check check : Checks.all()) {
      if (check instanceof CurveCheck) {
        assertThat(check.ask(evidence))
            .singleElement()
            .satisfies(f -> assertThat(f.outcome()).isEqualTo(Outcome.DATA_MISSING));
      }
    }
    assertThat(Verdict.of(Checks.ask(evidence))).isEqualTo(Verdict.FAIL);
  }

  @Test
  void answersWithHardlyAnyData() {
    SimulatedCampaign bare =
        With.component(SimulatedCampaign.good(), "policy", Policy.EMPTY)
            .without("B2", "B4", "B5", "B7", "B8", "C1", "C2", "C3", "S1");
    List<Finding> findings = Checks.ask(bare.evidence());
    assertThat(Verdict.of(findings)).isEqualTo(Verdict.FAIL);
    for (Check check : Checks.all()) {
      assertThat(findings).anyMatch(finding -> finding.checkId().equals(check.id()));
    }
  }

  @Test
  void writesRockwellHardnessWithoutPercent() {
    Evidence evidence = SimulatedCampaign.rockwell().evidence();
    assertThat(evidence.analysis().chosen()).isPresent();
    assertThat(Checks.ask(evidence))
        // The share of readings left out and the level of an interval are no hardnesses.
        .filteredOn(finding -> !finding.checkId().equals("exclusions-justified"))
        .allSatisfy(
            finding ->
                assertThat(finding.message().replace("95 % interval", "")).doesNotContain("%"));
  }

  @Test
  void namesEveryCheckOnceAndEveryLimitWithItsCheck() {
    List<String> ids = checks().map(Check::id).toList();
    assertThat(ids).doesNotHaveDuplicates();
    for (Check check : Checks.all()) {
      for (CheckLimit limit : check.limits()) {
        assertThat(limit.id()).startsWith(check.id());
      }
    }
  }

  @Test
  void keepsALimitForReasonsBelowTheOneThatStops() {
    // A policy may raise the first above the second; what it allows must then not stop.
    SimulatedCampaign campaign = SimulatedCampaign.good().limited("between-block-scatter", 0.2);
    SimulatedCampaign swapped =
        With.component(SimulatedCampaign.unsettled(), "policy", campaign.policy());
    assertThat(Answers.objections(new BetweenBlockLimit(), swapped)).isEmpty();
  }
}
