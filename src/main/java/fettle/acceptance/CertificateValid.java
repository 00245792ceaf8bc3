package fettle.acceptance;

import fettle.block.Certificate;
import fettle.calibration.BlockResponse;
import fettle.reading.Reading;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Certificates must stand on the days on which the blocks were read. */
final class CertificateValid extends StatedCheck {
  CertificateValid() {
    super(
        new Statement(
            "certificate-valid",
            Severity.STOPS_RELEASE,
            "Was every block's certificate valid on the days on which the block was read?",
            "After the end of its validity nobody stands behind the certified hardness; a block may"
                + " have aged, worn or been reworked.",
            "Have the block certified again and add the new certificate, or leave the block out of"
                + " the dossier.",
            "ISO/IEC 17025:2017, 6.4.13, and the end of validity on the certificate"
                + FROM_MEMORY));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    KeptReadings readings = KeptReadings.of(evidence);
    for (BlockResponse block : SubjectBlocks.of(evidence)) {
      findings.add(
          ask(
              block,
              readings.all().stream().filter(r -> r.block().equals(block.block().id())).toList(),
              evidence.assessedOn()));
    }
    return findings;
  }

  private Finding ask(BlockResponse block, List<Reading> readings, LocalDate assessedOn) {
    Certificate certificate = block.certificate();
    String which = "certificate " + certificate.number().orElse("without a number");
    if (certificate.validUntil().isEmpty()) {
      return missing()
          .on(block)
          .saying(
              "Block "
                  + block.block().id()
                  + ", "
                  + which
                  + ": no end of validity is stated; give it as valid_until in the blocks table.");
    }
    LocalDate end = certificate.validUntil().get();
    for (Reading reading : readings) {
      LocalDate day = reading.takenAt().map(time -> time.toLocalDate()).orElse(assessedOn);
      if (day.isAfter(end)) {
        return failed()
            .at(reading)
            .saying(
                "Block "
                    + block.block().id()
                    + ", "
                    + which
                    + ": validity ended on "
                    + end
                    + ", but the reading in "
                    + KeptReadings.place(reading)
                    + " is of "
                    + day
                    + (reading.takenAt().isEmpty() ? " (day of assessment, no time given)." : "."));
      }
    }
    return passed()
        .on(block)
        .saying(
            "Block "
                + block.block().id()
                + ", "
                + which
                + ": valid until "
                + end
                + ", which covers its readings.");
  }
}
