package fettle.acceptance;

import fettle.block.Certificate;
import fettle.calibration.BlockResponse;
import java.util.List;

/**
 * A coverage factor far from 2 mostly means that a standard uncertainty was entered as an expanded
 * one, or the other way round.
 */
final class CertificateUncertainty extends StatedCheck {
  private static final CheckLimit SMALLEST =
      new CheckLimit(
          "certificate-uncertainty-low", 1, CheckLimit.Unit.NUMBER, "smallest coverage factor");
  private static final CheckLimit LARGEST =
      new CheckLimit(
          "certificate-uncertainty", 4.5, CheckLimit.Unit.NUMBER, "largest coverage factor");

  CertificateUncertainty() {
    super(
        new Statement(
            "certificate-uncertainty",
            Severity.STOPS_RELEASE,
            "Is the coverage factor of every certificate one that a certificate can have?",
            "U divided by a wrong k enters every number of the curve's uncertainty.",
            "Read U and k from the certificate again; k is 2 on most, 1 for a standard uncertainty.",
            "ISO 33401:2024 asks for U and k"
                + FROM_MEMORY
                + "; the bounds are derived: 1 is a standard uncertainty, 4.5 exceeds Student's t at"
                + " 95 % with 2 degrees of freedom, 4.30"),
        SMALLEST,
        LARGEST);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    LimitInForce low = SMALLEST.under(evidence.policy());
    LimitInForce high = LARGEST.under(evidence.policy());
    HardnessText text = HardnessText.of(evidence);
    return SubjectBlocks.of(evidence).stream().map(block -> ask(block, low, high, text)).toList();
  }

  private Finding ask(BlockResponse block, LimitInForce low, LimitInForce high, HardnessText text) {
    Certificate certificate = block.certificate();
    double k = certificate.coverageFactor();
    LimitInForce limit = k < low.value() ? low : high;
    boolean plausible = k >= low.value() && k <= high.value();
    return (plausible ? passed() : failed())
        .judged(k, limit)
        .on(block)
        .saying(
            text.block(block)
                + " has U = "
                + text.size(certificate.expandedUncertainty(), certificate.certified())
                + " with k = "
                + Figure.of(k, 3)
                + (plausible ? "." : k < low.value() ? ", below the " : ", above the ")
                + (plausible ? "" : limit.text() + "."));
  }
}
