package fettle.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.quantity.Method;
import fettle.reading.Reading;
import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoLaboratoryTest {
  private static final DemoLaboratory LABORATORY =
      DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED);

  /**
   * Hash over path and contents of all files in order, recorded from this program when the demo was
   * made. It changes when the demo changes, which is then said in the changelog.
   */
  private static final String PINNED =
      "76aa48bef008d33d51ee3e9192f5e56ee1b2513e564b275600581e7161142ed3";

  @Test
  void sameSeedGivesTheSameBytes() throws Exception {
    assertThat(hash(LABORATORY)).isEqualTo(PINNED);
    assertThat(hash(DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED))).isEqualTo(PINNED);
    assertThat(hash(DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED + 1))).isNotEqualTo(PINNED);
  }

  private static String hash(DemoLaboratory laboratory) throws Exception {
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    for (Map.Entry<String, byte[]> file : laboratory.files().entrySet()) {
      digest.update(file.getKey().getBytes(StandardCharsets.UTF_8));
      digest.update((byte) 0);
      digest.update(file.getValue());
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  @Test
  void filesAreWrittenOnceAndNeverOver(@TempDir Path folder) throws IOException {
    List<Path> written = LABORATORY.writeTo(folder.resolve("new"));
    assertThat(written).hasSize(3 + 4 * 5);
    for (Map.Entry<String, byte[]> file : LABORATORY.files().entrySet()) {
      assertThat(folder.resolve("new/incoming").resolve(file.getKey()))
          .hasBinaryContent(file.getValue());
    }
    Path blocks = folder.resolve("new/incoming/blocks.csv");
    Files.writeString(blocks, "mine");
    assertThatThrownBy(() -> LABORATORY.writeTo(folder.resolve("new")))
        .isInstanceOf(InputRefusedException.class)
        .hasMessageStartingWith("The demo data were not written: the folder is there already.");
    assertThat(blocks).hasContent("mine");
  }

  @Test
  void everythingSaysThatItIsInvented() throws IOException {
    Map<String, byte[]> files = LABORATORY.files();
    assertThat(text(files, "README.txt"))
        .startsWith("INVENTED AND SIMULATED DATA. NEVER TO BE USED FOR PARTS.");
    assertThat(text(files, "policy.json")).contains("Example limits of an invented laboratory");
    text(files, "blocks.csv").lines().skip(1).forEach(l -> assertThat(l).contains("INVENTED-"));
    files.keySet().stream()
        .filter(name -> name.contains("/"))
        .flatMap(name -> text(files, name).lines().skip(1))
        .forEach(line -> assertThat(line).contains("(invented)"));
    LABORATORY
        .dossiers()
        .forEach(d -> assertThat(d.title()).startsWith("Invented and simulated: "));
  }

  @Test
  void policyCarriesACitationAndAPersonForEachFigure() throws IOException {
    JsonNode policy = new ObjectMapper().readTree(LABORATORY.files().get("policy.json"));
    List<JsonNode> entries = new ArrayList<>();
    policy.get("limits").forEach(entries::add);
    policy.get("typeB").forEach(entries::add);
    for (String name :
        List.of(
            "targetUncertainty",
            "permissibleError",
            "decisionRule",
            "responseResolution",
            "intervals")) {
      entries.add(policy.get(name));
    }
    assertThat(entries).hasSize(10);
    for (JsonNode entry : entries) {
      assertThat(entry.get("citation").asText())
          .isEqualTo("example, to be checked against the laboratory's own copies of the standards");
      assertThat(entry.get("enteredBy").asText()).endsWith("(invented)");
      assertThat(LocalDate.parse(entry.get("on").asText())).isBefore("2026-10-05");
    }
  }

  @Test
  void readingsInFilesAreThoseInMemory() throws IOException {
    Map<String, byte[]> files = LABORATORY.files();
    for (DemoDossier dossier : LABORATORY.dossiers()) {
      Map<String, List<String>> lines = new HashMap<>();
      for (Reading reading : LABORATORY.readings(dossier.name())) {
        String name = dossier.name() + "/" + reading.file();
        String line =
            lines
                .computeIfAbsent(name, n -> text(files, n).lines().toList())
                .get(reading.line() - 1);
        String[] cells = line.split(",", -1);
        assertThat(cells).hasSize(12);
        assertThat(cells[0]).isEqualTo(reading.block());
        assertThat(Double.parseDouble(cells[1])).isEqualTo(reading.displayed());
        assertThat(cells[2]).isEqualTo(reading.takenAt().orElseThrow().toString());
        assertThat(cells[4]).isEqualTo(reading.operator().orElseThrow());
        assertThat(Double.parseDouble(cells[6])).isEqualTo(reading.temperatureC().orElseThrow());
        if (dossier.method() == Method.UCI) {
          assertThat(Double.parseDouble(cells[7]))
              .isEqualTo(reading.freeFrequencyHz().orElseThrow());
        } else {
          assertThat(cells[7]).isEmpty();
        }
        assertThat(Double.parseDouble(cells[8])).isEqualTo(reading.xMm().orElseThrow());
      }
    }
  }

  @Test
  void blocksInTheFileAreThoseInMemory() throws IOException {
    List<Map<String, String>> rows =
        new CsvMapper()
            .readerForMapOf(String.class)
            .with(CsvSchema.emptySchema().withHeader())
            .<Map<String, String>>readValues(LABORATORY.files().get("blocks.csv"))
            .readAll();
    List<ReferenceBlock> blocks = LABORATORY.blocks();
    assertThat(rows).hasSameSizeAs(blocks);
    for (int i = 0; i < rows.size(); i++) {
      Map<String, String> row = rows.get(i);
      ReferenceBlock block = blocks.get(i);
      Certificate certificate = block.certificates().get(0);
      assertThat(row)
          .hasSize(23)
          .containsEntry("block", block.id())
          .containsEntry("scale", certificate.scale().symbol())
          .containsEntry("certificate", certificate.number().orElseThrow())
          .containsEntry("valid_until", certificate.validUntil().orElseThrow().toString())
          .containsEntry("reference_machine", certificate.referenceMachine().orElseThrow())
          .containsEntry("material", block.material().orElseThrow())
          .containsEntry("role", block.defaultRole().id())
          .containsEntry("heat", block.heat().orElseThrow())
          .containsEntry("indentations", "10");
      assertNumber(row, "certified", certificate.certified());
      assertNumber(row, "expanded_uncertainty", certificate.expandedUncertainty());
      assertNumber(row, "coverage_factor", certificate.coverageFactor());
      assertNumber(row, "non_uniformity", certificate.nonUniformity().orElseThrow());
      assertNumber(row, "u_shared", certificate.sharedUncertainty().orElseThrow());
      assertNumber(row, "thickness_mm", block.thicknessMm().orElseThrow());
      assertNumber(row, "mass_kg", block.massKg().orElseThrow());
      assertNumber(row, "roughness_ra_um", block.roughnessRaUm().orElseThrow());
      assertNumber(row, "elastic_modulus_gpa", block.elasticModulusGpa().orElseThrow());
      assertNumber(row, "u_elastic_modulus_gpa", 0.6);
      assertNumber(row, "poisson_ratio", block.poissonRatio().orElseThrow());
    }
  }

  private static void assertNumber(Map<String, String> row, String column, double expected) {
    assertThat(Double.parseDouble(row.get(column))).as(column).isEqualTo(expected);
  }

  @Test
  void everyBlockIsReadThreeTimesInEveryRunInAnotherOrder() {
    for (DemoDossier dossier : LABORATORY.dossiers()) {
      Map<String, List<Reading>> runs =
          LABORATORY.readings(dossier.name()).stream()
              .collect(Collectors.groupingBy(reading -> reading.run().orElseThrow()));
      assertThat(runs).containsOnlyKeys("run-1", "run-2", "run-3", "run-4");
      Set<LocalDate> days = new TreeSet<>();
      Set<List<String>> orders =
          runs.values().stream()
              .map(run -> run.stream().map(Reading::block).filter(b -> b.startsWith("N")).toList())
              .collect(Collectors.toSet());
      assertThat(orders).hasSize(4);
      runs.forEach(
          (name, run) -> {
            days.add(run.get(0).takenAt().orElseThrow().toLocalDate());
            assertThat(run).isSortedAccordingTo((a, b) -> compareTime(a, b));
            String operator = Integer.parseInt(name.substring(4)) % 2 == 1 ? "Amber" : "Slate";
            assertThat(run)
                .allSatisfy(r -> assertThat(r.operator()).hasValue("Operator " + operator));
            dossier
                .roles()
                .forEach(
                    (block, role) ->
                        assertThat(count(run, block))
                            .isEqualTo(
                                switch (role) {
                                  case FIT, CHECK -> 3;
                                  case STANDARD -> 10;
                                  case DRIFT -> 9;
                                }));
          });
      assertThat(days).hasSize(4);
    }
  }

  private static int compareTime(Reading a, Reading b) {
    return a.takenAt().orElseThrow().compareTo(b.takenAt().orElseThrow());
  }

  private static int count(List<Reading> readings, String block) {
    return (int) readings.stream().filter(reading -> reading.block().equals(block)).count();
  }

  @Test
  void orderOfReadingDoesNotFollowHardness() {
    // Rank correlation below 0.7: common practice, no source.
    for (DemoDossier dossier : LABORATORY.dossiers()) {
      DemoTruth truth = LABORATORY.truth(dossier.name());
      LABORATORY.readings(dossier.name()).stream()
          .filter(reading -> reading.block().startsWith("N"))
          .collect(Collectors.groupingBy(reading -> reading.run().orElseThrow()))
          .values()
          .forEach(
              run -> {
                List<String> order = run.stream().map(Reading::block).distinct().toList();
                List<String> ranked =
                    order.stream()
                        .sorted(
                            (a, b) ->
                                Double.compare(truth.trueHardnessOf(a), truth.trueHardnessOf(b)))
                        .toList();
                double square = 0;
                int n = order.size();
                for (int i = 0; i < n; i++) {
                  square += Math.pow(i - ranked.indexOf(order.get(i)), 2);
                }
                assertThat(1 - 6 * square / (n * (n * n - 1.0))).isBetween(-0.7, 0.7);
              });
    }
  }

  @Test
  void placesKeepTheSpacingRulesOverAllFiles() {
    Map<String, List<Reading>> byBlock = new HashMap<>();
    for (DemoDossier dossier : LABORATORY.dossiers()) {
      LABORATORY.readings(dossier.name()).forEach(r -> add(byBlock, r));
      LABORATORY.reverification(dossier.name()).forEach(r -> add(byBlock, r));
    }
    byBlock.forEach(
        (block, readings) -> {
          boolean rebound = block.startsWith("NR") || block.startsWith("SR");
          // Vickers 98 N on at least 120 HV: d = sqrt(0.1891·98/120) = 0.393 mm; 3 d between
          // centres, 2.5 d to the edge (ISO 6507-1, from memory). Rebound: 3 mm between edges of
          // impressions of at most 0.9 mm (A956 and ISO 16859-1, from memory).
          double pitch = rebound ? 3.9 : 3 * 0.393;
          double size = rebound ? 120 : 60;
          for (int i = 0; i < readings.size(); i++) {
            double x = readings.get(i).xMm().orElseThrow();
            double y = readings.get(i).yMm().orElseThrow();
            double edge =
                rebound
                    ? 60 - Math.hypot(x - 60, y - 60)
                    : Math.min(Math.min(x, size - x), Math.min(y, size - y));
            assertThat(edge).isGreaterThan(5);
            for (int j = 0; j < i; j++) {
              double dx = x - readings.get(j).xMm().orElseThrow();
              double dy = y - readings.get(j).yMm().orElseThrow();
              assertThat(Math.hypot(dx, dy)).isGreaterThan(pitch);
            }
          }
        });
  }

  private static void add(Map<String, List<Reading>> byBlock, Reading reading) {
    byBlock.computeIfAbsent(reading.block(), b -> new ArrayList<>()).add(reading);
  }

  @Test
  void blocksSuitTheirInstrument() {
    for (ReferenceBlock block : LABORATORY.blocks()) {
      boolean rebound = block.id().contains("R-");
      // Rebound type D without support: 5 kg and 54 mm (ISO 16859-1, A956); UCI 0.3 kg and 15 mm
      // (from memory and common practice).
      assertThat(block.massKg().orElseThrow()).isGreaterThanOrEqualTo(rebound ? 5 : 0.3);
      assertThat(block.thicknessMm().orElseThrow()).isGreaterThanOrEqualTo(rebound ? 54 : 15);
      assertThat(block.roughnessRaUm().orElseThrow()).isLessThanOrEqualTo(0.4);
    }
  }

  @Test
  void checkBlocksComeFromAnotherHeatAndLieInsideTheFittedOnes() {
    for (DemoDossier dossier : LABORATORY.dossiers()) {
      DemoTruth truth = LABORATORY.truth(dossier.name());
      List<ReferenceBlock> fit = blocks(dossier, BlockRole.FIT);
      List<ReferenceBlock> check = blocks(dossier, BlockRole.CHECK);
      assertThat(fit).hasSizeBetween(8, 12);
      assertThat(check).hasSize(3);
      Set<String> heats =
          fit.stream().map(block -> block.heat().orElseThrow()).collect(Collectors.toSet());
      assertThat(heats).hasSizeGreaterThanOrEqualTo(2);
      double[] hardness =
          fit.stream().mapToDouble(b -> truth.trueHardnessOf(b.id())).sorted().toArray();
      double low = hardness[0];
      double high = hardness[hardness.length - 1];
      assertThat(high / low).isBetween(1.6, 1.95);
      for (int i = 0; i < 3; i++) {
        assertThat(heats).doesNotContain(check.get(i).heat().orElseThrow());
        double share =
            Math.log(truth.trueHardnessOf(check.get(i).id()) / low) / Math.log(high / low);
        assertThat(share).isBetween(i / 3.0, (i + 1) / 3.0);
      }
    }
  }

  private static List<ReferenceBlock> blocks(DemoDossier dossier, BlockRole role) {
    return LABORATORY.blocks().stream()
        .filter(block -> dossier.roles().get(block.id()) == role)
        .toList();
  }

  @Test
  void theCorrectedResponseRecoversTheShift() {
    double sum = 0;
    int n = 0;
    for (DemoDossier dossier : LABORATORY.dossiers()) {
      for (SimulatedReading simulated : LABORATORY.campaign(dossier.name()).runs()) {
        double corrected = simulated.reading().response(dossier.zeroFrequencyHz());
        double bound = dossier.method() == Method.UCI ? 1.0 : 0.5;
        // Display and free-rod frequency are rounded to 1 Hz each; rebound to one unit.
        assertThat(corrected).isCloseTo(simulated.response(), within(bound + 1e-9));
        sum += corrected - simulated.response();
        n++;
      }
    }
    // Two rounding errors of variance 1/12 each; four standard errors.
    assertThat(sum / n).isCloseTo(0, within(4 * Math.sqrt(1 / 6.0 / n)));
  }

  @Test
  void withoutRoundingTheDisplayCorrectsExactly() {
    double free = Instrument.UCI.freeFrequencyHz(22.3).orElseThrow();
    double zero = Instrument.UCI.zeroFrequencyHz().orElseThrow();
    assertThat(Instrument.UCI.displayed(2500, 22.3) + zero - free).isCloseTo(2500, within(1e-9));
    assertThat(Instrument.UCI.freeFrequencyHz(24).orElseThrow() - free)
        .isCloseTo(-17, within(1e-9));
  }

  @Test
  void freeRodFrequencyFollowsTheTemperatureOfTheDay() {
    Set<Double> seen = new TreeSet<>();
    double at23 = Instrument.UCI.freeFrequencyHz(23).orElseThrow();
    assertThat(at23).isBetween(78_000.0, 80_000.0);
    for (Reading reading : LABORATORY.readings("nab-as-cast-hv10")) {
      double temperature = reading.temperatureC().orElseThrow();
      assertThat(temperature).isBetween(22.0, 24.0);
      // Rounding: 0.5 Hz, and 0.05 K times 10 Hz/K.
      assertThat(reading.freeFrequencyHz().orElseThrow())
          .isCloseTo(at23 - 10 * (temperature - 23), within(1.0 + 1e-9));
      seen.add(reading.freeFrequencyHz().orElseThrow());
    }
    assertThat(seen).hasSizeGreaterThan(5);
  }

  @Test
  void datesFitTheStory() {
    for (DemoDossier dossier : LABORATORY.dossiers()) {
      List<Reading> later = LABORATORY.reverification(dossier.name());
      assertThat(LABORATORY.readings(dossier.name()))
          .allSatisfy(
              r -> assertThat(r.takenAt().orElseThrow().toLocalDate()).isBefore("2026-10-30"));
      assertThat(later)
          .allSatisfy(
              r ->
                  assertThat(r.takenAt().orElseThrow().toLocalDate())
                      .isBetween("2026-11-10", "2026-11-19"));
      blocks(dossier, BlockRole.CHECK)
          .forEach(block -> assertThat(count(later, block.id())).isEqualTo(10));
    }
  }

  private static String text(Map<String, byte[]> files, String name) {
    return new String(files.get(name), StandardCharsets.UTF_8);
  }
}
