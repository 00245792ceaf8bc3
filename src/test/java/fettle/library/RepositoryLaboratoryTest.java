package fettle.library;

import static org.assertj.core.api.Assertions.assertThat;

import fettle.calibration.Calibration;
import fettle.demo.DemoLaboratory;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The checkout is itself a laboratory: what lies in it is what the stated simulation gives. */
class RepositoryLaboratoryTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "nab-as-cast-hv10",
        "nab-annealed-hv10",
        "nab-quenched-tempered-hv10",
        "nab-as-cast-hbw"
      })
  void holdsTheDemoLaboratoryAsSimulated(String name) {
    LaboratoryFolder laboratory =
        LaboratoryFolder.open(Path.of(""), Clock.systemUTC(), "fettle test", "tester");
    DemoLaboratory demo = DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED);
    var campaign = laboratory.campaign(name);
    assertThat(campaign.readings()).isEqualTo(demo.readings(name));
    assertThat(demo.blocks()).containsAll(campaign.blocks());
    assertThat(Calibration.analyse(campaign, Optional.empty()).chosen()).isPresent();
  }
}
