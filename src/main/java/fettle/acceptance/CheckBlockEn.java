package fettle.acceptance;

import fettle.calibration.CheckBlockResult;

/** Check blocks must agree with the curve within the uncertainty of the difference. */
final class CheckBlockEn extends CheckBlockCheck {
  private static final CheckLimit LARGEST =
      new CheckLimit("check-block-en", 1, CheckLimit.Unit.NUMBER, "largest |E_n|");

  CheckBlockEn() {
    super(
        new Statement(
            "check-block-en",
            Severity.STOPS_RELEASE,
            "Does every check block agree with the curve within the uncertainty of the difference?",
            "A difference beyond its own uncertainty means that curve, block or uncertainty is"
                + " wrong; what curve and block share is removed first, for it would flatter.",
            "Check mark, certificate and readings of the block; if they stand, the curve or its"
                + " uncertainty does not hold there.",
            "ISO 13528:2022, E_n" + StatedCheck.FROM_MEMORY),
        LARGEST);
  }

  @Override
  Finding ask(Evidence evidence, CheckBlockResult result) {
    HardnessText text = HardnessText.of(evidence);
    LimitInForce limit = LARGEST.under(evidence.policy());
    double en = Math.abs(result.en());
    boolean agrees = en <= limit.value();
    double certified = result.block().certificate().certified();
    return (agrees ? passed() : failed())
        .judged(en, limit)
        .on(result.block())
        .saying(
            text.block(result.block())
                + ": the curve gives "
                + text.value(result.hardness())
                + ", a difference of "
                + text.difference(result.deviation(), certified)
                + " with U = "
                + text.size(result.expandedUncertainty())
                + ", |E_n| = "
                + Figure.measured(en, 2)
                + ", "
                + (agrees ? "within the " : "above the ")
                + limit.text()
                + ".");
  }
}
