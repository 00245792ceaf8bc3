package fettle.acceptance;

import fettle.block.Certificate;
import fettle.calibration.BlockResponse;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * A certified hardness is traceable only where its certificate, laboratory and machine are named.
 */
final class CertificateChain extends StatedCheck {
  CertificateChain() {
    super(
        new Statement(
            "certificate-chain",
            Severity.STOPS_RELEASE,
            "Does every certificate name its number, laboratory, date and reference machine?",
            "Metrological traceability is a documented chain; a value whose certificate cannot be"
                + " found again has none.",
            "Complete the certificate's cells in the blocks table from the paper.",
            "ISO/IEC 17025:2017, 6.5 and Annex A" + FROM_MEMORY));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    return SubjectBlocks.of(evidence).stream()
        .map(block -> ask(block, evidence.assessedOn()))
        .toList();
  }

  private Finding ask(BlockResponse block, LocalDate assessedOn) {
    Certificate certificate = block.certificate();
    List<String> absent = new ArrayList<>();
    if (certificate.number().isEmpty()) {
      absent.add("certificate");
    }
    if (certificate.certifiedBy().isEmpty()) {
      absent.add("certified_by");
    }
    if (certificate.certifiedOn().isEmpty()) {
      absent.add("certified_on");
    }
    if (certificate.referenceMachine().isEmpty()) {
      absent.add("reference_machine");
    }
    if (!absent.isEmpty()) {
      return missing()
          .on(block)
          .saying(
              "Block "
                  + block.block().id()
                  + ": its certificate does not state "
                  + String.join(", ", absent)
                  + "; fill these columns of the blocks table.");
    }
    String which =
        "Block " + block.block().id() + ": certificate " + certificate.number().orElseThrow();
    LocalDate on = certificate.certifiedOn().orElseThrow();
    if (on.isAfter(assessedOn)) {
      return failed()
          .on(block)
          .saying(which + " is dated " + on + ", after the day of assessment " + assessedOn + ".");
    }
    return passed()
        .on(block)
        .saying(
            which
                + " of "
                + certificate.certifiedBy().orElseThrow()
                + ", "
                + on
                + ", machine "
                + certificate.referenceMachine().orElseThrow()
                + ".");
  }
}
