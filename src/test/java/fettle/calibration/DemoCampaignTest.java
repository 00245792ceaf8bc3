package fettle.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fettle.curve.BudgetLine;
import fettle.curve.CurveEvaluator;
import fettle.curve.CurveIdentity;
import fettle.curve.HardnessEstimate;
import fettle.curve.Status;
import fettle.curve.ValidRange;
import fettle.demo.DemoDossier;
import fettle.demo.DemoLaboratory;
import fettle.demo.DemoTruth;
import fettle.fit.ModelId;
import fettle.policy.DecisionRule;
import fettle.policy.ErrorLimits;
import fettle.policy.Policy;
import fettle.policy.TypeB;
import fettle.quantity.ResponseKind;
import fettle.reading.Exclusion;
import fettle.reading.Reading;
import fettle.refusal.InputRefusedException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The whole analysis on the simulated demo laboratory, whose truth is known. */
class DemoCampaignTest {
  private static final DemoLaboratory LABORATORY =
      DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED);
  private static final TypeB TYPE_B =
      new TypeB(
          OptionalDouble.of(0.005),
          OptionalDouble.of(0.004),
          OptionalDouble.of(0.002),
          OptionalDouble.of(0.0005));

  private static Policy policy(Optional<ErrorLimits> target) {
    return new Policy(
        "test",
        true,
        target,
        Optional.of(ErrorLimits.constant(true, 0.06)),
        Optional.of(new DecisionRule(1, false)),
        TYPE_B,
        OptionalDouble.of(1),
        OptionalDouble.empty(),
        OptionalInt.empty(),
        OptionalInt.empty(),
        Map.of(),
        Optional.empty());
  }

  private static Dossier dossier(DemoDossier demo, Policy policy) {
    CurveIdentity identity =
        new CurveIdentity(
            demo.name(),
            Optional.of(demo.title()),
            demo.material(),
            demo.method(),
            demo.scale(),
            ResponseKind.usualOf(demo.method()),
            demo.testForceNewtons(),
            Optional.of(demo.instrument()),
            Optional.of(demo.probe()),
            demo.zeroFrequencyHz());
    return new Dossier(identity, demo.roles(), policy);
  }

  private static DemoDossier demo(String name) {
    return LABORATORY.dossiers().stream()
        .filter(dossier -> dossier.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** The gross reading left out, as a technician would after screening. */
  private static Campaign campaign(String name, Policy policy) {
    List<Reading> readings = LABORATORY.readings(name);
    List<Exclusion> exclusions =
        readings.stream()
            .filter(reading -> reading.note().map("probe tilted on contact"::equals).orElse(false))
            .filter(reading -> reading.block().equals("NC-04"))
            .map(
                reading ->
                    new Exclusion(
                        reading.file(), reading.line(), "technician", "tilted", Instant.EPOCH))
            .toList();
    return new Campaign(dossier(demo(name), policy), LABORATORY.blocks(), readings, exclusions);
  }

  private static Analysis analyse(String name) {
    return Calibration.analyse(campaign(name, policy(Optional.empty())), Optional.empty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "nab-as-cast-hv10",
        "nab-annealed-hv10",
        "nab-quenched-tempered-hv10",
        "nab-as-cast-hbw"
      })
  void intervalsHoldTheSimulatedTruthOverTheRange(String name) {
    ChosenCurve chosen = analyse(name).chosen().orElseThrow();
    CurveEvaluator evaluator = chosen.curve().evaluator();
    DemoTruth truth = LABORATORY.truth(name);
    ValidRange range = chosen.curve().range();
    for (int k = 0; k <= 20; k++) {
      double r = range.responseLow() + k * (range.responseHigh() - range.responseLow()) / 20;
      HardnessEstimate estimate = evaluator.curveAt(r);
      assertThat(Math.abs(estimate.hardness() - truth.trueHardness(r)))
          .as("response %s", r)
          .isLessThanOrEqualTo(estimate.expandedUncertainty());
    }
  }

  @Test
  void budgetLinesSumToTheWholeUncertainty() {
    CurveEvaluator evaluator =
        analyse("nab-as-cast-hv10").chosen().orElseThrow().curve().evaluator();
    for (double response : new double[] {2300, 2600, 2950}) {
      double sum = 0;
      for (BudgetLine line : evaluator.budget(response, 3, 40)) {
        sum += line.standardUncertainty() * line.standardUncertainty();
      }
      double u = evaluator.resultAt(response, 3, 40).standardUncertainty();
      assertThat(Math.sqrt(sum))
          .isCloseTo(u, org.assertj.core.data.Percentage.withPercentage(1e-8));
    }
  }

  @Test
  void aWronglyCertifiedCheckBlockStandsOut() {
    List<CheckBlockResult> checks =
        analyse("nab-quenched-tempered-hv10").chosen().orElseThrow().checkBlocks();
    for (CheckBlockResult check : checks) {
      boolean wrong = check.block().block().id().equals("NQ-92");
      assertThat(Math.abs(check.en()) > 1).as(check.block().block().id()).isEqualTo(wrong);
      assertThat(check.status()).isEqualTo(Status.IN_RANGE);
    }
    assertThat(checks).hasSize(3);
  }

  @Test
  void screeningFindsTheGrossReadingAndLeavesItIn() {
    Campaign campaign =
        new Campaign(
            dossier(demo("nab-as-cast-hv10"), policy(Optional.empty())),
            LABORATORY.blocks(),
            LABORATORY.readings("nab-as-cast-hv10"),
            List.of());
    List<ScreeningFlag> outliers =
        Screening.flags(campaign).stream().filter(flag -> flag.level() == 0.01).toList();
    assertThat(outliers).extracting(ScreeningFlag::block).containsOnly("NC-04");
    assertThat(outliers.get(0).line()).hasValue(52);
    assertThat(BlockResponses.of(campaign))
        .filteredOn(block -> block.block().id().equals("NC-04"))
        .allMatch(block -> block.count() == 12);
  }

  @Test
  void theRangeEndsWhereTheBandReachesTheTarget() {
    ErrorLimits target = ErrorLimits.constant(true, 0.05);
    Analysis analysis =
        Calibration.analyse(
            campaign("nab-as-cast-hv10", policy(Optional.of(target))), Optional.empty());
    ChosenCurve chosen = analysis.chosen().orElseThrow();
    ValidRange range = chosen.curve().range();
    CurveEvaluator evaluator = chosen.curve().evaluator();
    for (int k = 0; k <= 50; k++) {
      double r = range.responseLow() + k * (range.responseHigh() - range.responseLow()) / 50;
      assertThat(evaluator.simultaneousHalfWidth(r))
          .isLessThanOrEqualTo(target.at(evaluator.hardness(r)) * (1 + 1e-9));
    }
  }

  @Test
  void aChoiceWithoutAMonotoneCurveIsRefused() {
    assertThatThrownBy(
            () ->
                Calibration.analyse(
                    campaign("nab-as-cast-hv10", policy(Optional.empty())),
                    Optional.of(new ModelChoice(new ModelId("polynomial-7"), "P", "to see"))))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            """
            Model polynomial-7 is not strictly monotone over the blocks' range.
              where     dossier nab-as-cast-hv10
              expected  a curve that gives one hardness for one response
              do        choose a model with fewer parameters, or look for a wrong block or reading""");
  }

  @Test
  void aChoiceWithTooManyParametersIsRefused() {
    assertThatThrownBy(
            () ->
                Calibration.analyse(
                    campaign("nab-as-cast-hv10", policy(Optional.empty())),
                    Optional.of(new ModelChoice(new ModelId("polynomial-9"), "P", "to see"))))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            """
            Model polynomial-9 cannot be used: no fit: 10 fitting blocks; polynomial-9 needs at least 19.
              where     dossier nab-as-cast-hv10
              expected  a model that these blocks determine
              do        choose another model, or read more blocks""");
  }

  @Test
  void readingsOnAnUnknownBlockAreRefused() {
    Campaign good = campaign("nab-as-cast-hbw", policy(Optional.empty()));
    Campaign bad = new Campaign(good.dossier(), List.of(), good.readings(), good.exclusions());
    Reading first = good.readings().get(0);
    assertThatThrownBy(() -> Calibration.analyse(bad, Optional.empty()))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            "Block \""
                + first.block()
                + "\" is not in the laboratory's reference blocks.\n"
                + "  where     "
                + first.file()
                + ", line "
                + first.line()
                + "\n"
                + "  expected  a block that was added before its readings\n"
                + "  do        add the block with its certificate, or correct its name in the"
                + " readings file");
  }

  @Test
  void tooFewFittingBlocksAreRefused() {
    Campaign good = campaign("nab-as-cast-hbw", policy(Optional.empty()));
    List<Reading> two =
        good.readings().stream()
            .filter(r -> r.block().equals("NR-01") || r.block().equals("NR-02"))
            .toList();
    Campaign bad = new Campaign(good.dossier(), good.blocks(), two, List.of());
    assertThatThrownBy(() -> Calibration.analyse(bad, Optional.empty()))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            """
            Dossier nab-as-cast-hbw has readings on 2 fitting blocks.
              where     dossier nab-as-cast-hbw
              expected  at least 4 fitting blocks for a straight line, 5 for a power law; 6 to 8 are usual
              do        add blocks with role fit and readings on them""");
  }

  @Test
  void oneReadingABlockAndRunGivesNoRepeatability() {
    Campaign good = campaign("nab-as-cast-hbw", policy(Optional.empty()));
    java.util.Set<String> seen = new java.util.HashSet<>();
    List<Reading> single =
        good.readings().stream()
            .filter(r -> seen.add(r.block() + "/" + r.run().orElse("")))
            .toList();
    Campaign bad = new Campaign(good.dossier(), good.blocks(), single, List.of());
    assertThatThrownBy(() -> Calibration.analyse(bad, Optional.empty()))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            """
            No block was read twice in one run, so repeatability cannot be estimated.
              where     readings of the fitting blocks
              expected  at least two readings of a block in the same run; five or more are usual
              do        take further readings, or name the runs as they were""");
  }

  @Test
  void theSameCampaignGivesTheSameBits() {
    Analysis first = analyse("nab-annealed-hv10");
    Analysis second = analyse("nab-annealed-hv10");
    assertThat(second.chosen().orElseThrow().curve().beta())
        .containsExactly(first.chosen().orElseThrow().curve().beta());
    assertThat(second.chosen().orElseThrow().curve().covariance())
        .containsExactly(first.chosen().orElseThrow().curve().covariance());
    assertThat(second.chosen().orElseThrow().monotoneShare())
        .isEqualTo(first.chosen().orElseThrow().monotoneShare());
  }
}
