package fettle.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.reading.Reading;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The faults are where planted-faults.json says, and nowhere else. */
class PlantedFaultsTest {
  private static final DemoLaboratory PLANTED =
      DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED);
  private static final DemoLaboratory CLEAN =
      DemoLaboratory.withoutFaults(DemoLaboratory.SHIPPED_SEED);
  private static final Map<String, JsonNode> FAULTS = new HashMap<>();

  @BeforeAll
  static void readTheList() throws IOException {
    JsonNode list;
    try (InputStream stream = PlantedFaultsTest.class.getResourceAsStream("planted-faults.json")) {
      list = new ObjectMapper().readTree(stream);
    }
    list.get("faults").forEach(fault -> FAULTS.put(fault.get("kind").asText(), fault));
    assertThat(FAULTS)
        .containsOnlyKeys("gross reading", "expired certificate", "wrong certificate");
  }

  @Test
  void oneReadingAndNoOtherIsGross() {
    JsonNode fault = FAULTS.get("gross reading");
    int found = 0;
    for (DemoDossier dossier : PLANTED.dossiers()) {
      List<Reading> planted = all(PLANTED, dossier.name());
      List<Reading> clean = all(CLEAN, dossier.name());
      assertThat(planted).hasSameSizeAs(clean);
      for (int i = 0; i < planted.size(); i++) {
        if (!planted.get(i).equals(clean.get(i))) {
          found++;
          Reading reading = planted.get(i);
          assertThat(dossier.name()).isEqualTo(fault.get("dossier").asText());
          assertThat(reading.block()).isEqualTo(fault.get("block").asText());
          assertThat(reading.file()).isEqualTo(fault.get("file").asText());
          assertThat(reading.line()).isEqualTo(fault.get("line").asInt());
          assertThat(
                  reading.response(dossier.zeroFrequencyHz())
                      / clean.get(i).response(dossier.zeroFrequencyHz()))
              .isCloseTo(fault.get("factor").asDouble(), within(0.001));
          assertThat(dossier.roles().get(reading.block())).isEqualTo(BlockRole.FIT);
        }
      }
    }
    assertThat(found).isEqualTo(1);
  }

  @Test
  void oneFittingBlockAndNoOtherWasReadAfterItsCertificateEnded() {
    JsonNode fault = FAULTS.get("expired certificate");
    List<String> expired = new ArrayList<>();
    for (DemoDossier dossier : PLANTED.dossiers()) {
      for (Reading reading : all(PLANTED, dossier.name())) {
        LocalDate day = reading.takenAt().orElseThrow().toLocalDate();
        if (!certificate(PLANTED, reading.block()).validOn(day)) {
          expired.add(dossier.name() + " " + reading.block());
        }
      }
    }
    String block = fault.get("block").asText();
    assertThat(expired).hasSize(12).containsOnly(fault.get("dossier").asText() + " " + block);
    assertThat(certificate(PLANTED, block).validUntil())
        .hasValue(LocalDate.parse(fault.get("validUntil").asText()));
    assertThat(role(block)).isEqualTo(BlockRole.FIT);
  }

  @Test
  void oneCheckBlockAndNoOtherIsWronglyCertified() {
    JsonNode fault = FAULTS.get("wrong certificate");
    List<String> wrong = new ArrayList<>();
    for (ReferenceBlock block : PLANTED.blocks()) {
      double certified = certificate(PLANTED, block.id()).certified();
      double right = certificate(CLEAN, block.id()).certified();
      if (certified != right) {
        wrong.add(block.id());
        // Both are rounded to 0.1.
        assertThat(certified)
            .isCloseTo(fault.get("factor").asDouble() * right, within(0.05 + 0.05 * 1.07));
      }
    }
    assertThat(wrong).containsExactly(fault.get("block").asText());
    assertThat(role(wrong.get(0))).isEqualTo(BlockRole.CHECK);
  }

  private static List<Reading> all(DemoLaboratory laboratory, String dossier) {
    List<Reading> all = new ArrayList<>(laboratory.readings(dossier));
    all.addAll(laboratory.reverification(dossier));
    return all;
  }

  private static BlockRole role(String id) {
    return block(PLANTED, id).defaultRole();
  }

  private static Certificate certificate(DemoLaboratory laboratory, String id) {
    return block(laboratory, id).certificates().get(0);
  }

  private static ReferenceBlock block(DemoLaboratory laboratory, String id) {
    return laboratory.blocks().stream()
        .filter(block -> block.id().equals(id))
        .findFirst()
        .orElseThrow();
  }
}
