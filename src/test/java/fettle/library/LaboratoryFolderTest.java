package fettle.library;

import static fettle.library.TestLaboratory.NAME;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fettle.block.BlockRole;
import fettle.block.ReferenceBlock;
import fettle.calibration.SimulatedCampaign;
import fettle.policy.Policy;
import fettle.reading.Exclusion;
import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LaboratoryFolderTest {
  private static final SimulatedCampaign SIMULATED = TestLaboratory.SIMULATED;

  @TempDir Path directory;
  private Path home;

  @BeforeEach
  void resolve() throws IOException {
    home = directory.toRealPath();
  }

  private static String refusal(Executable action) {
    return assertThrows(InputRefusedException.class, action).getMessage();
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void anEmptyFolderIsALaboratoryAndStaysEmptyUntilSomethingIsKept() throws IOException {
    LaboratoryFolder laboratory = TestLaboratory.open(home);
    assertEquals(List.of(), laboratory.blocks());
    assertEquals(List.of(), laboratory.dossiers());
    assertEquals(
        """
        There is no dossier steel.
          where     %s
          expected  the name of a dossier that was begun
          do        `fettle dossier list` shows them all"""
            .formatted(home.resolve("curves")),
        refusal(() -> laboratory.dossier("steel")));
    try (Stream<Path> files = Files.list(home)) {
      assertEquals(0, files.count());
    }
  }

  @Test
  void aFolderThatIsNotThereIsRefused() {
    Path missing = home.resolve("missing");
    assertEquals(
        """
        The laboratory folder does not exist.
          where     %s
          expected  a folder; an empty one will do
          do        make the folder, or name another with --home"""
            .formatted(missing),
        refusal(() -> TestLaboratory.open(missing)));
  }

  @Test
  void everythingComesBackAsItWent() throws IOException {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    assertEquals(SIMULATED.blocks(), laboratory.blocks());
    Policy policy = PolicyFile.read(TestLaboratory.POLICY, "policy.json");
    assertEquals(SIMULATED.campaign(NAME, policy), laboratory.campaign(NAME));
    Path folder = home.resolve("curves").resolve(NAME);
    assertThat(folder.resolve("policy.json")).hasBinaryContent(TestLaboratory.POLICY);
    SIMULATED
        .runs()
        .forEach(
            (file, bytes) ->
                assertThat(folder.resolve("readings").resolve(file)).hasBinaryContent(bytes));
    assertEquals(List.of(NAME), laboratory.dossiers());
  }

  @Test
  void addingAgainWhatIsThereDoesNothingAndSaysSo() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    String head = laboratory.head(NAME);
    String blocks = laboratory.verifyBlockChain().head();
    AddedBlocks added = laboratory.addBlocks(SIMULATED.blocks());
    assertEquals(8, added.unchanged().size());
    assertEquals(List.of(), added.added());
    AddedReadings readings = laboratory.addReadings(NAME, SIMULATED.runs());
    assertEquals(4, readings.unchanged().size());
    assertEquals(96, readings.readings());
    assertEquals(head, laboratory.head(NAME));
    assertEquals(blocks, laboratory.verifyBlockChain().head());
  }

  private static ReferenceBlock b1(String number, LocalDate on, Optional<String> heat) {
    ReferenceBlock block = SIMULATED.blocks().get(0);
    return new ReferenceBlock(
        block.id(),
        block.material(),
        BlockRole.FIT,
        block.thicknessMm(),
        block.massKg(),
        block.roughnessRaUm(),
        heat,
        block.productForm(),
        block.elasticModulusGpa(),
        block.elasticModulusUncertaintyGpa(),
        block.poissonRatio(),
        List.of(SimulatedCampaign.certificate(151.2, number, on)),
        Optional.empty());
  }

  @Test
  void aFurtherCertificateIsAppendedAndTheNewestIsInForce() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    AddedBlocks added =
        laboratory.addBlocks(List.of(b1("C-1b", LocalDate.of(2026, 6, 1), Optional.of("H 7"))));
    assertEquals(List.of("B1"), added.extended());
    ReferenceBlock block = laboratory.block("B1");
    assertEquals(2, block.certificates().size());
    assertEquals("C-1b", block.certificates().get(1).number().orElseThrow());
    assertEquals("H 7", block.heat().orElseThrow());
    laboratory.addBlocks(List.of(b1("C-0", LocalDate.of(2025, 6, 1), Optional.empty())));
    assertEquals("C-0", laboratory.block("B1").certificates().get(0).number().orElseThrow());
  }

  @Test
  void aContradictionKeepsAllBlocksOut() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    laboratory.addBlocks(List.of(b1("C-1b", LocalDate.of(2026, 6, 1), Optional.of("H 7"))));
    ReferenceBlock fresh =
        new SimulatedCampaign(8)
            .blocks().stream().findFirst().map(b -> renamed(b, "N1")).orElseThrow();
    assertEquals(
        """
        Block B1 has heat H 8 here, but H 7 in the laboratory.
          where     block B1
          expected  the same heat as before, or none
          do        correct it, or give the second block its own mark""",
        refusal(
            () ->
                laboratory.addBlocks(
                    List.of(fresh, b1("C-1c", LocalDate.of(2026, 7, 1), Optional.of("H 8"))))));
    assertEquals(8, laboratory.blocks().size());
  }

  private static ReferenceBlock renamed(ReferenceBlock block, String id) {
    return new ReferenceBlock(
        id,
        block.material(),
        block.defaultRole(),
        block.thicknessMm(),
        block.massKg(),
        block.roughnessRaUm(),
        block.heat(),
        block.productForm(),
        block.elasticModulusGpa(),
        block.elasticModulusUncertaintyGpa(),
        block.poissonRatio(),
        block.certificates(),
        block.withdrawn());
  }

  @Test
  void aCertificateOfTheSameNumberAndOtherContentsIsRefused() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    assertEquals(
        """
        Block B1 has another certificate on HV10 with number C-1 already, of other contents.
          where     block B1
          expected  the certificate as it was entered, or one with another number
          do        correct it; a certificate that was issued anew has a number of its own""",
        refusal(
            () ->
                laboratory.addBlocks(
                    List.of(b1("C-1", LocalDate.of(2026, 6, 1), Optional.empty())))));
    assertEquals(
        """
        Block B1 has a certificate on HV10 already, and the dates do not tell which one is newer.
          where     block B1
          expected  certified_on in both, with different days
          do        state the date of certification""",
        refusal(
            () ->
                laboratory.addBlocks(
                    List.of(b1("C-1b", LocalDate.of(2026, 1, 15), Optional.empty())))));
  }

  @Test
  void aMarkThatDiffersOnlyInCaseIsRefused() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    assertEquals(
        """
        The block's mark "b1" differs only in case from "B1".
          where     block b1
          expected  the same mark for the same block, and clearly different ones for others
          do        correct it""",
        refusal(() -> laboratory.addBlocks(List.of(renamed(SIMULATED.blocks().get(0), "b1")))));
  }

  @Test
  void withdrawingABlockNamesTheDossiersThatUseIt() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    laboratory.createDossier(SimulatedCampaign.identity("other"), Optional.empty(), "");
    assertEquals(List.of(NAME), laboratory.withdrawBlock("B3", "cracked"));
    assertEquals("cracked", laboratory.block("B3").withdrawn().orElseThrow());
    assertEquals(
        """
        Block B3 was withdrawn before: cracked
          where     block B3
          expected  a block in use
          do        nothing is left to be done""",
        refusal(() -> laboratory.withdrawBlock("B3", "again")));
    assertEquals(
        """
        There is no block B33.
          where     %s
          expected  the mark of a block that was added
          do        did you mean B3?"""
            .formatted(home.resolve("reference-blocks")),
        refusal(() -> laboratory.withdrawBlock("B33", "lost")));
    assertEquals(
        "Block B3 was withdrawn: cracked",
        refusal(() -> laboratory.addBlocks(SIMULATED.blocks())).split("\n")[0]);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "..",
        "../steel",
        "a/b",
        "a\\b",
        "-a",
        "A",
        "a b",
        "a.b",
        "é",
        "a\u0000b",
        "a\nb",
        "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"
      })
  void namesThatCannotBeFoldersAreRefused(String name) {
    LaboratoryFolder laboratory = TestLaboratory.open(home);
    String message =
        refusal(
            () -> laboratory.createDossier(SimulatedCampaign.identity(name), Optional.empty(), ""));
    assertThat(message).matches("(?s)The dossier's name \"[^\n\u0000]*\" cannot be used.\n.*");
    assertThat(home).isEmptyDirectory();
  }

  @ParameterizedTest
  @ValueSource(strings = {"con", "nul", "com1", "lpt9", "aux", "prn"})
  void namesThatAnOperatingSystemReservesAreRefused(String name) {
    assertEquals(
        """
        The dossier's name "%s" is one that an operating system reserves.
          where     dossier name
          expected  any other name
          do        add to it, such as %s-1"""
            .formatted(name, name),
        refusal(
            () ->
                TestLaboratory.open(home)
                    .createDossier(SimulatedCampaign.identity(name), Optional.empty(), "")));
  }

  @Test
  void aNameThatIsTakenIsRefused() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    assertEquals(
        """
        A dossier named steel-hv10 exists.
          where     %s
          expected  a name that is not taken
          do        choose another name"""
            .formatted(home.resolve("curves").resolve(NAME)),
        refusal(
            () ->
                laboratory.createDossier(SimulatedCampaign.identity(NAME), Optional.empty(), "")));
    assertEquals(
        "did you mean steel-hv10?",
        refusal(() -> laboratory.dossier("stel-hv10")).split("do        ")[1]);
  }

  @Test
  void aBadPolicyBeginsNoDossier() {
    LaboratoryFolder laboratory = TestLaboratory.open(home);
    assertThat(
            refusal(
                () ->
                    laboratory.createDossier(
                        SimulatedCampaign.identity(NAME), Optional.of(utf8("{}")), "p.json")))
        .startsWith("The file does not say what it is.\n  where     p.json\n");
    assertThat(home).isEmptyDirectory();
  }

  @ParameterizedTest
  @CsvSource({
    "../../etc/day 1.csv, etc_day_1.csv",
    "tag äöü.CSV, tag____.CSV",
    "monday, monday.csv",
    ".hidden.csv, hidden.csv",
    "run-9.csv, run-9.csv"
  })
  void readingsAreKeptUnderANameThatEveryFileSystemAllows(String given, String kept) {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    AddedReadings added =
        laboratory.addReadings(NAME, Map.of(given, utf8("block,response\nB1,4900\n")));
    assertEquals(List.of(kept), added.added());
    assertThat(home.resolve("curves").resolve(NAME).resolve("readings").resolve(kept)).exists();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "...", "con.csv", "NUL", "lpt1.day.csv"})
  void readingsWithoutAUsableNameAreRefused(String name) {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    assertEquals(
        """
        The readings cannot be kept under the file name "%s".
          where     %s
          expected  a name of 1 to 96 letters a to z, digits, '.', '_' and '-', none that an \
        operating system reserves
          do        rename the file, such as day-1.csv"""
            .formatted(name, name),
        refusal(
            () -> laboratory.addReadings(NAME, Map.of(name, utf8("block,response\nB1,4900\n")))));
  }

  @Test
  void oneBadFileKeepsAllReadingsOut() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    Map<String, byte[]> files = new java.util.LinkedHashMap<>();
    files.put("good.csv", utf8("block,response\nB1,4900\n"));
    files.put("bad.csv", utf8("block,response\nB1,4900\nB-2,4300\n"));
    assertEquals(
        """
        The laboratory has no block "B-2".
          where     bad.csv, line 3, column block
          expected  the mark of a block that was added before its readings
          do        did you mean "B2"? Nothing was added""",
        refusal(() -> laboratory.addReadings(NAME, files)));
    assertEquals(96, laboratory.campaign(NAME).readings().size());
    assertThat(home.resolve("curves").resolve(NAME).resolve("readings").resolve("good.csv"))
        .doesNotExist();
  }

  @Test
  void whatWasKeptIsNeverRewrittenNorCountedTwice() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    assertEquals(
        """
        The dossier has a readings file run-1.csv already, with other contents.
          where     run-1.csv
          expected  the same file as before, or a new name; what was kept is never rewritten
          do        rename the file; readings kept by mistake are left out one by one, with a \
        reason""",
        refusal(
            () ->
                laboratory.addReadings(
                    NAME, Map.of("run-1.csv", utf8("block,response\nB1,4900\n")))));
    assertEquals(
        """
        The name differs only in case from run-1.csv, which is there.
          where     Run-1.csv
          expected  names that every file system tells apart
          do        rename the file""",
        refusal(
            () ->
                laboratory.addReadings(
                    NAME, Map.of("Run-1.csv", utf8("block,response\nB1,4900\n")))));
    assertEquals(
        """
        24 of the 24 readings are in run-1.csv already.
          where     copy.csv
          expected  readings that the dossier does not have yet
          do        add only new readings; nothing was added""",
        refusal(() -> laboratory.addReadings(NAME, Map.of("copy.csv", SIMULATED.run(1)))));
    Map<String, byte[]> twice = new java.util.LinkedHashMap<>();
    twice.put("a b.csv", utf8("block,response\nB1,4900\n"));
    twice.put("a_b.csv", utf8("block,response\nB1,4901\n"));
    assertEquals(
        "Two of the files would be kept as a_b.csv.",
        refusal(() -> laboratory.addReadings(NAME, twice)).split("\n")[0]);
  }

  @Test
  void exclusionsAreReplayedFromTheHistory() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    laboratory.exclude(NAME, "run-2.csv", 5, "A. Person", "probe slipped");
    laboratory.exclude(NAME, "run-2.csv", 6, "A. Person", "probe slipped");
    laboratory.include(NAME, "run-2.csv", 5, "B. Person", "it had not");
    assertEquals(
        List.of(
            new Exclusion(
                "run-2.csv", 6, "A. Person", "probe slipped", TestLaboratory.CLOCK.instant())),
        TestLaboratory.open(home).campaign(NAME).exclusions());
    assertEquals(96, laboratory.campaign(NAME).readings().size());
  }

  @Test
  void exclusionsThatCannotBeAreRefused() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    laboratory.exclude(NAME, "run-1.csv", 2, "A. Person", "slipped");
    assertEquals(
        """
        The reading is left out already.
          where     dossier steel-hv10, run-1.csv, line 2
          expected  a reading that is in the fit
          do        nothing is left to be done""",
        refusal(() -> laboratory.exclude(NAME, "run-1.csv", 2, "A. Person", "slipped")));
    assertEquals(
        """
        The reading is not left out.
          where     dossier steel-hv10, run-1.csv, line 3
          expected  a reading that was left out
          do        nothing is left to be done""",
        refusal(() -> laboratory.include(NAME, "run-1.csv", 3, "A. Person", "slipped")));
    assertEquals(
        """
        Line 26 of run-1.csv holds no reading.
          where     dossier steel-hv10
          expected  lines 2 to 25; the header is line 1
          do        look the line up in the file""",
        refusal(() -> laboratory.exclude(NAME, "run-1.csv", 26, "A. Person", "slipped")));
    assertEquals(
        """
        The dossier holds no readings file named ../run-1.csv.
          where     dossier steel-hv10
          expected  one of run-1.csv, run-2.csv, run-3.csv, run-4.csv
          do        name one of them""",
        refusal(() -> laboratory.exclude(NAME, "../run-1.csv", 2, "A. Person", "slipped")));
    assertEquals(
        """
        A reading is left out or taken in by a person and for a reason; reason is blank.
          where     dossier steel-hv10
          expected  that person's reason, in words
          do        state it""",
        refusal(() -> laboratory.exclude(NAME, "run-1.csv", 3, "A. Person", " ")));
  }

  @Test
  void rolesOfADossierAreKept() {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    laboratory.assignRole(NAME, "B3", BlockRole.FIT);
    String head = laboratory.head(NAME);
    laboratory.assignRole(NAME, "B3", BlockRole.FIT);
    assertEquals(head, laboratory.head(NAME));
    assertEquals(Map.of("B3", BlockRole.FIT), laboratory.dossier(NAME).roles());
    assertEquals(
        "There is no block B9.",
        refusal(() -> laboratory.assignRole(NAME, "B9", BlockRole.FIT)).split("\n")[0]);
  }

  @ParameterizedTest
  @CsvSource({
    "curves/steel-hv10/dossier.json",
    "curves/steel-hv10/policy.json",
    "curves/steel-hv10/readings/run-3.csv",
    "reference-blocks/B5.json"
  })
  void aFileThatWasAlteredOrLostIsNamed(String file) throws IOException {
    LaboratoryFolder laboratory = TestLaboratory.filled(home);
    Path path = home.resolve(file);
    byte[] bytes = Files.readAllBytes(path);
    bytes[bytes.length / 2] ^= 1;
    Files.write(path, bytes);
    assertEquals(
        """
        The file is not the one that was written: it has been altered or damaged.
          where     %s
          expected  the bytes whose SHA-256 stands in history.jsonl
          do        put the file back from a backup; changes are made by the program only"""
            .formatted(path),
        refusal(() -> laboratory.campaign(NAME)));
    Files.delete(path);
    assertEquals("The file is missing.", refusal(() -> laboratory.campaign(NAME)).split("\n")[0]);
  }
}
