package fettle.acceptance;

import static fettle.acceptance.Answers.altered;
import static fettle.acceptance.Answers.objections;
import static fettle.acceptance.SimulatedCampaign.good;
import static fettle.acceptance.SimulatedCampaign.unsettled;
import static org.assertj.core.api.Assertions.assertThat;

import fettle.calibration.ModelChoice;
import fettle.fit.ModelId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Fit: every check fails where it should, in these words. */
class FitChecksTest {
  @Test
  void refusesTooFewBlocks() {
    assertThat(
            objections(
                new EnoughBlocks(), good().without("B2", "B4", "B5", "B7").choosing("power")))
        .containsExactly(
            "FAILED, stops release: Model power (2 parameters) rests on 4 fitting "
                + "blocks; it needs at least 5.");
  }

  @Test
  void asksForACurve() {
    assertThat(objections(new EnoughBlocks(), unsettled()))
        .containsExactly(
            "DATA_MISSING, stops release: There is no curve to ask: none was recommended "
                + "and none was chosen; look at the candidates with `fettle fit`, then name "
                + "one with --model, --by and --reason.");
  }

  @Test
  void judgesTheConditionNumber() {
    assertThat(objections(new FitConditioning(), good().limited("fit-conditioning", 1.2)))
        .containsExactly(
            "FAILED, stops release: The fit of model power settled after 5 iterations "
                + "with condition number 1.6, above the limit 1.2 (QP-7:2026, table 2).");
  }

  @Test
  void notesALargeConditionNumber() {
    assertThat(objections(new FitConditioning(), good().limited("fit-conditioning-note", 1.2)))
        .containsExactly(
            "FAILED, note: The fit of model power settled after 5 iterations with "
                + "condition number 1.6, above the limit 1.2 (QP-7:2026, table 2).");
  }

  @Test
  void namesTwoBlocksThatMayBeSwapped() {
    assertThat(objections(new BetweenBlockLimit(), good().swapped("B3", "B6")))
        .containsExactly(
            "FAILED, stops release: The blocks scatter about the curve (model "
                + "polynomial-1, the best candidate as no curve was chosen) by τ = 12.9 % "
                + "beyond their certificates, 95 % interval 7.98 % to 25.9 %, above the limit "
                + "5 % (default); exchanging the certified values of blocks B6 and B3 (294.8 "
                + "HV10 and 375.2 HV10) would bring it to 2.72 %, so the two may be swapped.");
  }

  @Test
  void judgesScatterThatNoExchangeExplains() {
    assertThat(objections(new BetweenBlockLimit(), unsettled()))
        .containsExactly(
            "FAILED, stops release: The blocks scatter about the curve (model "
                + "exponential, the best candidate as no curve was chosen) by τ = 6.26 % "
                + "beyond their certificates, 95 % interval 3.84 % to 12.6 %, above the limit "
                + "5 % (default); no exchange of two certified values explains it.");
  }

  @Test
  void asksWhyTheScatterExceedsTheLimitOfThePolicy() {
    assertThat(objections(new BetweenBlockLimit(), good().limited("between-block-scatter", 0.001)))
        .containsExactly(
            "FAILED, needs a written reason: The blocks scatter about the curve (model "
                + "power) by τ = 0.415 % beyond their certificates, 95 % interval 0 % to 1.58 "
                + "%, above the limit 0.1 % (QP-7:2026, table 2); no exchange of two certified "
                + "values explains it.");
  }

  @Test
  void cannotJudgeScatterWithoutAFit() {
    assertThat(objections(new BetweenBlockLimit(), good().without("B2", "B4", "B5", "B7", "B8")))
        .containsExactly(
            "DATA_MISSING, stops release: No candidate model could be fitted, so there "
                + "is nothing to judge by; the candidates of `fettle fit` say why.");
  }

  @Test
  void namesABlockOffTheCurve() {
    assertThat(objections(new BlockResidual(), good().certifiedWrongly("B4", 1.06)))
        .containsExactly(
            "FAILED, needs a written reason: Block B3 (certified 294.8 HV10) lies −7.0 "
                + "HV10 (−2.4 %) off the curve (model exponential, τ = 0), 3.0 of its standard "
                + "uncertainties of 2.3 HV10, above the limit 2.5 (default).",
            "FAILED, stops release: Block B4 (certified 342.1 HV10) lies +15 HV10 (+4.4 "
                + "%) off the curve (model exponential, τ = 0), 5.9 of its standard "
                + "uncertainties of 2.5 HV10, above the limit 4 (default).",
            "FAILED, needs a written reason: Block B6 (certified 375.2 HV10) lies −8.5 "
                + "HV10 (−2.3 %) off the curve (model exponential, τ = 0), 3.0 of its standard "
                + "uncertainties of 2.8 HV10, above the limit 2.5 (default).");
  }

  @Test
  void cannotJudgeResidualsWithoutAFit() {
    assertThat(objections(new BlockResidual(), good().without("B2", "B4", "B5", "B7", "B8")))
        .containsExactly(
            "DATA_MISSING, stops release: No candidate model could be fitted, so there "
                + "is nothing to judge by; the candidates of `fettle fit` say why.");
  }

  @Test
  void pointsToTheCertifiedValue() {
    assertThat(objections(new BlockPredictedByOthers(), good().certifiedWrongly("B4", 1.06)))
        .containsExactly(
            "FAILED, needs a written reason: Block B4 (certified 342.1 HV10): the others "
                + "(model exponential) predict 324.8 ± 9.8 HV10 (k = 2, its own certificate "
                + "included), a difference of −17 HV10 (−5.1 %) or z = −3.5, above the limit "
                + "2.5 (default); no other block fits an exchange and its readings repeat like "
                + "the others', so its certified value or the piece itself may differ from the "
                + "family: 324.8 HV10 is where the others see it.");
  }

  @Test
  void stopsAtAGrossError() {
    assertThat(objections(new BlockPredictedByOthers(), good().certifiedWrongly("B4", 1.15)))
        .containsExactly(
            "FAILED, stops release: Block B4 (certified 371.1 HV10): the others (model "
                + "exponential, the best candidate as no curve was chosen) predict 324.8 ± 9.7 "
                + "HV10 (k = 2, its own certificate included), a difference of −46 HV10 (−12 "
                + "%) or z = −9.5, above the limit 4 (default); no other block fits an "
                + "exchange and its readings repeat like the others', so its certified value "
                + "or the piece itself may differ from the family: 324.8 HV10 is where the "
                + "others see it.");
  }

  @Test
  void pointsToASwap() {
    assertThat(objections(new BlockPredictedByOthers(), good().swapped("B4", "B5")))
        .containsExactly(
            "FAILED, needs a written reason: Block B4 (certified 348.2 HV10): the others "
                + "(model power, the best candidate as no curve was chosen) predict 318.4 ± 21 "
                + "HV10 (k = 2, its own certificate included), a difference of −30 HV10 (−8.6 "
                + "%) or z = −2.8, above the limit 2.5 (default); it looks like a swap with "
                + "block B5 (certified 322.7 HV10), for with the two certified values "
                + "exchanged both agree with the others.");
  }

  @Test
  void pointsToTheReadings() {
    assertThat(
            objections(
                new BlockPredictedByOthers(), good().spread("B4", 5).certifiedWrongly("B4", 1.10)))
        .containsExactly(
            "FAILED, stops release: Block B4 (certified 355.0 HV10): the others (model "
                + "exponential, the best candidate as no curve was chosen) predict 324.8 ± 9.9 "
                + "HV10 (k = 2, its own certificate included), a difference of −30 HV10 (−8.5 "
                + "%) or z = −6.1, above the limit 4 (default); its readings scatter 4.9 times "
                + "as much as those of the other blocks (F = 24 on 8 and 56 degrees of "
                + "freedom, p < 0.001), so the readings may be at fault: look at face and "
                + "contact.");
  }

  @Test
  void cannotPredictWithoutAFit() {
    assertThat(
            objections(new BlockPredictedByOthers(), good().without("B2", "B4", "B5", "B7", "B8")))
        .containsExactly(
            "DATA_MISSING, stops release: No candidate model could be fitted, so there "
                + "is nothing to judge by; the candidates of `fettle fit` say why.");
  }

  @Test
  void judgesTheLeaveOneOutRatio() {
    assertThat(objections(new LeaveOneOutRatio(), good().limited("leave-one-out-ratio", 1.1)))
        .containsExactly(
            "FAILED, needs a written reason: Left-out blocks are predicted to 3.2 HV10 "
                + "(root mean square), all blocks fitted to 2.4 HV10, a ratio of 1.3, above "
                + "the limit 1.1 (QP-7:2026, table 2).");
  }

  @Test
  void stopsAtAModelThatFollowsItsBlocks() {
    assertThat(
            objections(new LeaveOneOutRatio(), good().without("B2", "B4").choosing("polynomial-3")))
        .containsExactly(
            "FAILED, stops release: Left-out blocks are predicted to 20 HV10 (root mean "
                + "square), all blocks fitted to 1.8 HV10, a ratio of 11, above the limit 2.5 "
                + "(default).");
  }

  @Test
  void judgesTheShareOfMonotoneCurves() {
    assertThat(
            objections(
                new MonotoneRange(),
                altered(chosen -> With.component(chosen, "monotoneShare", 0.987))))
        .containsExactly(
            "FAILED, stops release: The curve is proven strictly monotone for responses "
                + "from 1169.4 to 1551.8; of the curves drawn within its uncertainty a share "
                + "of 0.987 is, below the limit 0.999 (default).");
  }

  @Test
  void asksWhyTheExponentIsLow() {
    assertThat(objections(new ResponseExponent(), good().exponent(1.65)))
        .containsExactly(
            "FAILED, needs a written reason: At the middle of the range, 1302 Hz, the "
                + "hardness falls with the frequency shift to the power 1.63, below the limit "
                + "1.8 (default); contact stiffness gives 2.0 to 2.2.");
  }

  @Test
  void stopsAtAnExponentOfAnotherQuantity() {
    assertThat(objections(new ResponseExponent(), good().exponent(1.3)))
        .containsExactly(
            "FAILED, stops release: At the middle of the range, 1242 Hz, the hardness "
                + "falls with the frequency shift to the power 1.28, below the limit 1.5 "
                + "(default); contact stiffness gives 2.0 to 2.2.");
  }

  @Test
  void stopsAtASteepExponent() {
    assertThat(objections(new ResponseExponent(), good().exponent(3.3)))
        .containsExactly(
            "FAILED, stops release: At the middle of the range, 1421 Hz, the hardness "
                + "falls with the frequency shift to the power 3.26, above the limit 3 "
                + "(default); contact stiffness gives 2.0 to 2.2.");
  }

  @Test
  void missesASharedSource() {
    assertThat(
            objections(
                new SharedSourceInCurve(),
                altered(
                    chosen ->
                        With.component(
                            chosen,
                            "curve",
                            With.component(chosen.curve(), "sharedSources", List.of())))))
        .containsExactly(
            "FAILED, stops release: Machine Bench 1 is shared by 8 fitting blocks and "
                + "contributes nothing to the curve's standard uncertainty of 2.8 HV10 at the "
                + "middle of the range; it should be a part of it and above zero.");
  }

  @Test
  void asksForASharedSource() {
    assertThat(
            objections(
                new SharedSourceInCurve(),
                good().certificate("*", "sharedUncertainty", OptionalDouble.empty())))
        .containsExactly(
            "DATA_MISSING, stops release: No fitting block declares a shared uncertainty "
                + "with its reference machine; fill the columns reference_machine and u_shared "
                + "of the blocks table.");
  }

  @Test
  void findsACurveThatDoesNotFollowFromItsData() {
    assertThat(
            objections(
                new Recomputation(),
                altered(
                    chosen ->
                        With.component(
                            chosen,
                            "curve",
                            With.component(
                                chosen.curve(),
                                "beta",
                                new double[] {
                                  1.0001 * chosen.curve().beta()[0], chosen.curve().beta()[1]
                                })))))
        .containsExactly(
            "FAILED, stops release: Computed again at 11 responses over the range, "
                + "hardness and uncertainty differ by at most 0.0017 of their size, above the "
                + "limit 1·10⁻¹⁰ (default).");
  }

  @Test
  void findsAnotherModelThanTheOneChosen() {
    assertThat(
            objections(
                new Recomputation(),
                altered(
                    chosen ->
                        With.component(
                            chosen,
                            "choice",
                            Optional.of(
                                new ModelChoice(
                                    new ModelId("polynomial-2"), "B. Reader", "as in the plan"))))))
        .containsExactly(
            "FAILED, stops release: Computed again, the campaign gives model "
                + "polynomial-2 instead of model power.");
  }
}
