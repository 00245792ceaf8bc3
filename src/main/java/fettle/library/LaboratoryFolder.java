package fettle.library;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.block.BlockRole;
import fettle.block.ReferenceBlock;
import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.calibration.Calibration;
import fettle.calibration.Campaign;
import fettle.calibration.Dossier;
import fettle.calibration.ModelChoice;
import fettle.curve.CurveFile;
import fettle.curve.CurveIdentity;
import fettle.fit.ModelId;
import fettle.policy.Policy;
import fettle.reading.Exclusion;
import fettle.reading.Reading;
import fettle.reading.ReadingsFile;
import fettle.refusal.InputRefusedException;
import fettle.table.InputFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A laboratory: a folder of plain files. Any empty folder is one; nothing is made before something
 * is kept.
 */
public final class LaboratoryFolder {
  private final Path home;
  private final Clock clock;
  private final String program;
  private final String holder;
  private final DurableFiles files;
  private final BlockShelf blocks;

  private LaboratoryFolder(
      Path home, Clock clock, String program, String holder, DurableFiles files) {
    this.home = home;
    this.clock = clock;
    this.program = program;
    this.holder = holder;
    this.files = files;
    this.blocks = new BlockShelf(home, files);
  }

  /**
   * Opens a folder.
   *
   * @param home the folder
   * @param clock clock for events
   * @param program name and version of the program
   * @param holder who works here, for locks
   * @return the laboratory
   * @throws InputRefusedException if there is no such folder
   */
  public static LaboratoryFolder open(Path home, Clock clock, String program, String holder) {
    return open(home, clock, program, holder, FileSteps.DISK);
  }

  static LaboratoryFolder open(
      Path home, Clock clock, String program, String holder, FileSteps steps) {
    if (!Files.isDirectory(home)) {
      throw new InputRefusedException(
          "The laboratory folder does not exist.",
          home.toString(),
          "a folder; an empty one will do",
          "make the folder, or name another with --home");
    }
    return new LaboratoryFolder(home, clock, program, holder, new DurableFiles(steps));
  }

  /**
   * All reference blocks.
   *
   * @return by mark
   */
  public List<ReferenceBlock> blocks() {
    return blocks.all();
  }

  /**
   * One block.
   *
   * @param id its mark
   * @return the block
   * @throws InputRefusedException if there is none
   */
  public ReferenceBlock block(String id) {
    return blocks
        .find(id)
        .orElseThrow(
            () ->
                new InputRefusedException(
                    "There is no block " + id + ".",
                    blocks.folder().toString(),
                    "the mark of a block that was added",
                    "`fettle block list` shows them all"));
  }

  /**
   * Adds blocks, or further certificates of known blocks: all or none.
   *
   * @param list blocks
   * @return what was done
   * @throws InputRefusedException if a known block has other facts
   */
  public AddedBlocks addBlocks(List<ReferenceBlock> list) {
    try (FolderLock lock = FolderLock.take(blocks.folder(), holder)) {
      return blocks.add(list, clock.instant());
    }
  }

  /**
   * Withdraws a block from use.
   *
   * @param id its mark
   * @param reason why
   * @return names of the dossiers with readings on it
   */
  public List<String> withdrawBlock(String id, String reason) {
    if (reason.isBlank()) {
      throw new InputRefusedException(
          "A block is withdrawn with a reason.", "option --reason", "words", "say why");
    }
    ReferenceBlock block = block(id);
    try (FolderLock lock = FolderLock.take(blocks.folder(), holder)) {
      blocks.withdraw(block, reason, clock.instant());
    }
    return dossiers().stream().filter(name -> reads(name, id)).toList();
  }

  private boolean reads(String dossier, String block) {
    return folder(dossier).readings().stream()
        .flatMap(file -> file.readings().stream())
        .anyMatch(reading -> reading.block().equals(block));
  }

  /**
   * Names of all dossiers.
   *
   * @return in order of name
   */
  public List<String> dossiers() {
    Path curves = home.resolve("curves");
    if (!Files.isDirectory(curves)) {
      return List.of();
    }
    try (Stream<Path> entries = Files.list(curves)) {
      return entries
          .filter(entry -> Files.isRegularFile(entry.resolve("dossier.json")))
          .map(entry -> entry.getFileName().toString())
          .sorted()
          .toList();
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  /**
   * Begins a dossier.
   *
   * @param identity what the curve is for; its name becomes the folder's
   * @param policy bytes of a policy file, kept as they are
   * @param policyName name of that file, for messages
   * @throws InputRefusedException if the name cannot be or is taken, or the policy cannot be read
   */
  public void createDossier(CurveIdentity identity, Optional<byte[]> policy, String policyName) {
    DossierFile.requireName(identity.dossier());
    DossierFolder dossier = new DossierFolder(home, identity.dossier(), files);
    policy.ifPresent(bytes -> PolicyFile.read(bytes, policyName));
    if (Files.exists(dossier.file())) {
      throw new InputRefusedException(
          "A dossier named " + identity.dossier() + " exists.",
          dossier.folder().toString(),
          "a name that is not taken",
          "choose another name");
    }
    try (FolderLock lock = FolderLock.take(dossier.folder(), holder)) {
      byte[] bytes = DossierFile.bytes(identity, Map.of());
      ObjectNode data = Json.object().put("sha256", Json.sha256(bytes));
      if (policy.isPresent()) {
        files.write(dossier.policyFile(), policy.get());
        data.put("policy", Json.sha256(policy.get()));
      }
      files.write(dossier.file(), bytes);
      dossier.history().append(clock.instant(), "dossier-begun", data);
    }
  }

  private DossierFolder folder(String name) {
    DossierFile.requireName(name);
    DossierFolder dossier = new DossierFolder(home, name, files);
    if (!Files.exists(dossier.file())) {
      throw new InputRefusedException(
          "There is no dossier " + name + ".",
          home.resolve("curves").toString(),
          "the name of a dossier that was begun",
          "`fettle dossier list` shows them all");
    }
    return dossier;
  }

  /**
   * One dossier.
   *
   * @param name its name
   * @return the dossier with its policy
   * @throws InputRefusedException if there is none, or a file of it cannot be trusted
   */
  public Dossier dossier(String name) {
    DossierFolder dossier = folder(name);
    DossierFile.Content content =
        DossierFile.read(InputFile.bytes(dossier.file()), dossier.file().toString());
    Policy policy = Policy.EMPTY;
    if (Files.exists(dossier.policyFile())) {
      policy =
          PolicyFile.read(InputFile.bytes(dossier.policyFile()), dossier.policyFile().toString());
    }
    return new Dossier(content.identity(), content.roles(), policy);
  }

  /**
   * Gives a block a role in one dossier.
   *
   * @param name dossier
   * @param block mark of the block
   * @param role role
   */
  public void assignRole(String name, String block, BlockRole role) {
    DossierFolder dossier = folder(name);
    block(block);
    try (FolderLock lock = FolderLock.take(dossier.folder(), holder)) {
      Dossier current = dossier(name);
      Map<String, BlockRole> roles = new TreeMap<>(current.roles());
      roles.put(block, role);
      byte[] bytes = DossierFile.bytes(current.identity(), roles);
      files.write(dossier.file(), bytes);
      dossier
          .history()
          .append(
              clock.instant(),
              "role-assigned",
              Json.object()
                  .put("block", block)
                  .put("role", role.id())
                  .put("sha256", Json.sha256(bytes)));
    }
  }

  /**
   * Adds readings files: all or none, byte for byte.
   *
   * @param name dossier
   * @param contents bytes by file name
   * @return what was done
   * @throws InputRefusedException if a file cannot be read, a block is not known, or a name is
   *     taken
   */
  public AddedReadings addReadings(String name, Map<String, byte[]> contents) {
    DossierFolder dossier = folder(name);
    Set<String> known = new HashSet<>();
    for (ReferenceBlock block : blocks()) {
      known.add(block.id());
    }
    try (FolderLock lock = FolderLock.take(dossier.folder(), holder)) {
      return dossier.add(contents, known, clock.instant());
    }
  }

  /**
   * Leaves a reading out.
   *
   * @param name dossier
   * @param file readings file
   * @param line line in it
   * @param by person
   * @param reason reason
   */
  public void exclude(String name, String file, int line, String by, String reason) {
    DossierFolder dossier = folder(name);
    try (FolderLock lock = FolderLock.take(dossier.folder(), holder)) {
      dossier.exclude(file, line, by, reason, clock.instant());
    }
  }

  /**
   * Takes a reading in again.
   *
   * @param name dossier
   * @param file readings file
   * @param line line in it
   * @param by person
   * @param reason reason
   */
  public void include(String name, String file, int line, String by, String reason) {
    DossierFolder dossier = folder(name);
    try (FolderLock lock = FolderLock.take(dossier.folder(), holder)) {
      dossier.include(file, line, by, reason, clock.instant());
    }
  }

  /**
   * All that a fit rests on.
   *
   * @param name dossier
   * @return blocks, readings and exclusions
   */
  public Campaign campaign(String name) {
    DossierFolder dossier = folder(name);
    List<Reading> readings = new ArrayList<>();
    for (ReadingsFile file : dossier.readings()) {
      readings.addAll(file.readings());
    }
    Set<String> read = new HashSet<>();
    readings.forEach(reading -> read.add(reading.block()));
    List<ReferenceBlock> used =
        blocks().stream().filter(block -> read.contains(block.id())).toList();
    return new Campaign(dossier(name), used, readings, dossier.exclusions());
  }

  /**
   * Keeps the chosen curve of an analysis as the dossier's draft.
   *
   * @param name dossier
   * @param analysis analysis with a chosen curve
   * @return the draft as it now stands
   */
  public StoredCurve keepDraft(String name, Analysis analysis) {
    DossierFolder dossier = folder(name);
    ObjectNode content = CurveContent.content(analysis, inputs(dossier, analysis));
    byte[] bytes = Json.canonical(CurveContent.file(content, "draft", program));
    try (FolderLock lock = FolderLock.take(dossier.folder(), holder)) {
      files.write(dossier.draftFile(), bytes);
      dossier
          .history()
          .append(
              clock.instant(),
              "draft-kept",
              Json.object().put("fingerprint", Json.sha256(Json.canonical(content))));
    }
    return draft(name);
  }

  private List<InputFingerprint> inputs(DossierFolder dossier, Analysis analysis) {
    List<InputFingerprint> inputs = new ArrayList<>();
    inputs.add(fingerprint("dossier", dossier.file()));
    if (Files.exists(dossier.policyFile())) {
      inputs.add(fingerprint("policy", dossier.policyFile()));
    }
    for (BlockResponse response : analysis.blocks()) {
      inputs.add(fingerprint("block", blocks.fileOf(response.block().id())));
    }
    for (ReadingsFile file : dossier.readings()) {
      inputs.add(new InputFingerprint("readings", file.file(), file.sha256()));
    }
    ArrayNode exclusions = Json.object().putArray("exclusions");
    for (Exclusion exclusion : analysis.campaign().exclusions()) {
      exclusions
          .addObject()
          .put("file", exclusion.file())
          .put("line", exclusion.line())
          .put("by", exclusion.by())
          .put("reason", exclusion.reason());
    }
    inputs.add(
        new InputFingerprint(
            "exclusions",
            analysis.campaign().exclusions().size() + " readings left out",
            Json.sha256(Json.canonical(exclusions))));
    return inputs;
  }

  private static InputFingerprint fingerprint(String kind, Path file) {
    return new InputFingerprint(
        kind, file.getFileName().toString(), Json.sha256(InputFile.bytes(file)));
  }

  /**
   * Whether a draft is kept.
   *
   * @param name dossier
   * @return true if there is one
   */
  public boolean hasDraft(String name) {
    return Files.exists(folder(name).draftFile());
  }

  /**
   * The dossier's draft, its fingerprint verified.
   *
   * @param name dossier
   * @return the draft
   * @throws InputRefusedException if there is none, or the file was altered
   */
  public StoredCurve draft(String name) {
    DossierFolder dossier = folder(name);
    requireDraft(name, dossier);
    return stored(dossier.draftFile());
  }

  private static void requireDraft(String name, DossierFolder dossier) {
    if (!Files.exists(dossier.draftFile())) {
      throw new InputRefusedException(
          "Dossier " + name + " has no draft.",
          dossier.draftFile().toString(),
          "a draft kept by a fit",
          "run `fettle fit " + name + "` first");
    }
  }

  private static StoredCurve stored(Path file) {
    byte[] bytes = InputFile.bytes(file);
    ObjectNode node = Json.read(bytes, file.toString());
    Json.requireFormat(node, CurveFile.FORMAT, CurveFile.FORMAT_VERSION, file.toString());
    Fields top = new Fields(node, file.toString());
    String signed = top.text("fingerprint");
    ObjectNode content =
        top.optionalObject("content")
            .orElseThrow(() -> top.refusal("content", "The content is missing.", "an object"))
            .object();
    String now = Json.sha256(Json.canonical(content));
    if (!now.equals(signed) || !java.util.Arrays.equals(Json.canonical(node), bytes)) {
      throw new InputRefusedException(
          now.equals(signed)
              ? "The curve file was edited: it is no longer written as fettle writes it."
              : "The curve file was altered: its contents no longer have its fingerprint.",
          file.toString(),
          "fingerprint " + signed + "; the contents have " + now,
          "fit again, or restore the file from a backup; nothing was computed from it");
    }
    List<InputFingerprint> inputs = new ArrayList<>();
    for (Fields input : new Fields(content, file.toString(), "/content").objects("inputs")) {
      inputs.add(
          new InputFingerprint(input.text("kind"), input.text("name"), input.text("sha256")));
    }
    return new StoredCurve(
        file, CurveFile.read(bytes, file.toString()), signed, top.text("program"), inputs);
  }

  /**
   * The analysis behind the draft, computed again from the kept inputs with the recorded choice.
   *
   * @param name dossier
   * @return the analysis
   */
  public Analysis draftAnalysis(String name) {
    DossierFolder dossier = folder(name);
    requireDraft(name, dossier);
    ObjectNode node =
        Json.read(InputFile.bytes(dossier.draftFile()), dossier.draftFile().toString());
    Fields content =
        new Fields(node, dossier.draftFile().toString()).optionalObject("content").orElseThrow();
    return Calibration.analyse(campaign(name), recordedChoice(content));
  }

  private static Optional<ModelChoice> recordedChoice(Fields content) {
    Fields choice = content.optionalObject("choice").orElseThrow();
    if (!choice.has("by")) {
      return Optional.empty();
    }
    return Optional.of(
        new ModelChoice(
            new ModelId(content.text("model")), choice.text("by"), choice.text("reason")));
  }

  /**
   * Computes the draft again from the kept inputs and compares.
   *
   * @param name dossier
   * @return same bytes, close, or what differs
   */
  public Recomputation recompute(String name) {
    StoredCurve kept = draft(name);
    DossierFolder dossier = folder(name);
    ObjectNode content =
        (ObjectNode)
            Json.read(InputFile.bytes(dossier.draftFile()), dossier.draftFile().toString())
                .get("content");
    Analysis analysis = draftAnalysis(name);
    if (analysis.chosen().isEmpty()) {
      return new Recomputation(
          false,
          Double.POSITIVE_INFINITY,
          List.of("/model was " + content.get("model") + ", is absent"),
          "recomputed, and no model is recommended any more: "
              + analysis.recommendation().reason());
    }
    return ContentComparison.of(
        content, CurveContent.content(analysis, inputs(dossier, analysis)), kept.program());
  }

  /**
   * Where the report of the draft is kept.
   *
   * @param name dossier
   * @return file beside the draft
   */
  public Path draftReport(String name) {
    return folder(name).draftFile().resolveSibling("report.html");
  }

  /**
   * Head of the dossier's history: the hash of its last line.
   *
   * @param name dossier
   * @return 64 hexadecimal digits
   */
  public String head(String name) {
    return folder(name).history().head();
  }
}
