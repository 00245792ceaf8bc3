package fettle.library;

import fettle.calibration.Calibration;
import fettle.calibration.SimulatedCampaign;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;

/** A laboratory folder with the simulated campaign in it. */
final class TestLaboratory {
  static final String NAME = "steel-hv10";
  static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-25T09:00:00Z"), ZoneOffset.UTC);
  static final SimulatedCampaign SIMULATED = new SimulatedCampaign(7);

  static final byte[] POLICY =
      """
      {"format": "fettle-policy", "formatVersion": 1, "title": "Example of a test", "example": true,
       "permissibleError": {"steps": [{"upTo": 300, "relative": 0.05}, {"relative": 0.06}],
         "citation": "example", "enteredBy": "A. Person", "on": "2026-02-01"},
       "responseResolution": {"value": 1, "citation": "example", "enteredBy": "A. Person",
         "on": "2026-02-01"},
       "limits": {"between-block-scatter": {"limit": 0.03, "citation": "example",
         "enteredBy": "A. Person", "on": "2026-02-01"}}}
      """
          .getBytes(StandardCharsets.UTF_8);

  private TestLaboratory() {}

  static LaboratoryFolder open(Path home) {
    return LaboratoryFolder.open(home, CLOCK, "fettle test", "tester, process 1");
  }

  static LaboratoryFolder open(Path home, FileOperations operations) {
    return LaboratoryFolder.open(
        home, CLOCK, "fettle test", "tester, process 1", operations, 10_000);
  }

  static LaboratoryFolder filled(Path home) {
    LaboratoryFolder laboratory = open(home);
    laboratory.addBlocks(SIMULATED.blocks());
    laboratory.createDossier(SimulatedCampaign.identity(NAME), Optional.of(POLICY), "policy.json");
    laboratory.addReadings(NAME, SIMULATED.runs());
    return laboratory;
  }

  static StoredCurve keepDraft(LaboratoryFolder laboratory) {
    return laboratory.keepDraft(
        NAME, Calibration.analyse(laboratory.campaign(NAME), Optional.empty()));
  }
}
