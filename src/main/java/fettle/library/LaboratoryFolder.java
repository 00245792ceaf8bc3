package fettle.library;

import fettle.block.BlockRole;
import fettle.block.ReferenceBlock;
import fettle.calibration.Analysis;
import fettle.calibration.Campaign;
import fettle.calibration.Dossier;
import fettle.curve.CurveIdentity;
import fettle.refusal.InputRefusedException;
import fettle.table.NearMatch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A laboratory: a folder of plain files. Any existing folder is one, an empty one too; nothing is
 * made in it before something is kept.
 *
 * <p>May be used by several threads; several folders may be open on one path, in one process or in
 * many. One writes at a time, and the others wait for it for some seconds.
 */
public final class LaboratoryFolder {
  private static final String CURVES = "curves";
  private static final long PATIENCE_MS = 10_000;

  private final Path home;
  private final Clock clock;
  private final String program;
  private final FileOperations operations;
  private final FolderLock lock;
  private final BlockShelf shelf;

  private LaboratoryFolder(
      Path home, Clock clock, String program, FileOperations operations, FolderLock lock) {
    this.home = home;
    this.clock = clock;
    this.program = program;
    this.operations = operations;
    this.lock = lock;
    this.shelf = new BlockShelf(ledger(home.resolve(BlockShelf.DIRECTORY)));
  }

  /**
   * Opens a folder.
   *
   * @param home an existing folder
   * @param clock clock for the times of events
   * @param program name and version of the program, told beside a draft and never hashed into it
   * @param holder who works here, on which machine and in which process: what somebody else is told
   *     who finds the folder locked
   * @return the laboratory
   * @throws InputRefusedException if there is no such folder
   */
  public static LaboratoryFolder open(Path home, Clock clock, String program, String holder) {
    return open(home, clock, program, holder, new DiskOperations(), PATIENCE_MS);
  }

  static LaboratoryFolder open(
      Path home,
      Clock clock,
      String program,
      String holder,
      FileOperations operations,
      long patienceMs) {
    if (!Files.isDirectory(home)) {
      throw new InputRefusedException(
          Files.exists(home)
              ? "The laboratory folder is a file."
              : "The laboratory folder does not exist.",
          home.toString(),
          "a folder; an empty one will do",
          "make the folder, or name another with --home");
    }
    try {
      Path real = home.toRealPath();
      FolderLock lock = new FolderLock(real, clock, holder, patienceMs);
      return new LaboratoryFolder(real, clock, program, operations, lock);
    } catch (IOException failure) {
      throw Ledger.unreadable(home, failure);
    }
  }

  private Ledger ledger(Path directory) {
    return new Ledger(directory, operations, lock, clock);
  }

  /**
   * All reference blocks, withdrawn ones too.
   *
   * @return in order of their marks
   */
  public List<ReferenceBlock> blocks() {
    return List.copyOf(shelf.shelf().values());
  }

  /**
   * One block.
   *
   * @param id its mark
   * @return the block with all its certificates
   * @throws InputRefusedException if there is none of that mark
   */
  public ReferenceBlock block(String id) {
    return shelf.get(id);
  }

  /**
   * Adds blocks, or further certificates and facts to blocks that are there: all or none.
   *
   * @param blocks blocks with at least one certificate each
   * @return what was done
   * @throws InputRefusedException if a statement contradicts what is kept, or a block was withdrawn
   */
  public AddedBlocks addBlocks(List<ReferenceBlock> blocks) {
    return shelf.add(blocks);
  }

  /**
   * Withdraws a block from use.
   *
   * @param id its mark
   * @param reason why, not blank
   * @return names of the dossiers that use it: with readings on it, or a role for it
   * @throws InputRefusedException if there is no such block, or it was withdrawn before
   */
  public List<String> withdrawBlock(String id, String reason) {
    shelf.withdraw(id, reason);
    return dossiers().stream().filter(name -> folder(name).usesBlock(id)).toList();
  }

  /**
   * Names of all dossiers.
   *
   * @return in order of name
   */
  public List<String> dossiers() {
    Path curves = home.resolve(CURVES);
    if (!Files.isDirectory(curves)) {
      return List.of();
    }
    try (Stream<Path> entries = Files.list(curves)) {
      return entries
          .filter(entry -> Files.exists(entry.resolve(History.FILE)))
          .map(entry -> entry.getFileName().toString())
          .filter(name -> unchecked(name).exists())
          .sorted()
          .toList();
    } catch (IOException failure) {
      throw Ledger.unreadable(curves, failure);
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
    String name = FolderNames.dossier(identity.dossier());
    policy.ifPresent(bytes -> PolicyFile.read(bytes, policyName));
    unchecked(name).begin(new DossierJson(identity, new TreeMap<>()), policy);
  }

  private DossierFolder unchecked(String name) {
    return new DossierFolder(name, ledger(home.resolve(CURVES).resolve(name)), shelf);
  }

  private DossierFolder folder(String name) {
    DossierFolder folder = unchecked(FolderNames.dossier(name));
    if (!folder.exists()) {
      List<String> names = dossiers();
      throw new InputRefusedException(
          "There is no dossier " + name + ".",
          home.resolve(CURVES).toString(),
          "the name of a dossier that was begun",
          NearMatch.of(name, names)
              .map(near -> "did you mean " + near + "?")
              .orElse("`fettle dossier list` shows them all"));
    }
    return folder;
  }

  /**
   * One dossier.
   *
   * @param name its name
   * @return the dossier with its policy
   * @throws InputRefusedException if there is none, or a file of it cannot be trusted
   */
  public Dossier dossier(String name) {
    return folder(name).dossier();
  }

  /**
   * Gives a block a role in one dossier.
   *
   * @param name dossier
   * @param block mark of the block
   * @param role role
   * @throws InputRefusedException if there is no such dossier or block
   */
  public void assignRole(String name, String block, BlockRole role) {
    folder(name).assignRole(block, role);
  }

  /**
   * Adds readings files: all or none, byte for byte.
   *
   * @param name dossier
   * @param files bytes by file name; characters that not every file system allows become '_'
   * @return what was done, with the names under which the files are kept
   * @throws InputRefusedException if a file cannot be read as readings, names a block that is not
   *     known, or has the name of another file that is kept
   */
  public AddedReadings addReadings(String name, Map<String, byte[]> files) {
    return folder(name).addReadings(files);
  }

  /**
   * Leaves a reading out of the fit; the reading itself stays.
   *
   * @param name dossier
   * @param file readings file, as it is kept
   * @param line line in it
   * @param by person who decides
   * @param reason that person's reason
   * @throws InputRefusedException if there is no such reading, or it is left out already
   */
  public void exclude(String name, String file, int line, String by, String reason) {
    folder(name).exclude(file, line, by, reason);
  }

  /**
   * Takes a reading in again that was left out.
   *
   * @param name dossier
   * @param file readings file, as it is kept
   * @param line line in it
   * @param by person who decides
   * @param reason that person's reason
   * @throws InputRefusedException if there is no such reading, or it is not left out
   */
  public void include(String name, String file, int line, String by, String reason) {
    folder(name).include(file, line, by, reason);
  }

  /**
   * All that a fit rests on, as it is now.
   *
   * @param name dossier
   * @return blocks, readings and exclusions
   */
  public Campaign campaign(String name) {
    return folder(name).campaign();
  }

  /**
   * Keeps the chosen curve of an analysis as the dossier's draft, in place of one that is there.
   *
   * @param name dossier
   * @param analysis analysis of {@link #campaign} with a chosen curve
   * @return the draft as it is kept
   * @throws InputRefusedException if the analysis has no curve, or the dossier has changed since
   */
  public StoredCurve keepDraft(String name, Analysis analysis) {
    return folder(name).keepDraft(analysis, program);
  }

  /**
   * Whether a draft is kept.
   *
   * @param name dossier
   * @return true if there is one
   */
  public boolean hasDraft(String name) {
    return folder(name).hasDraft();
  }

  /**
   * The dossier's draft, its fingerprint checked.
   *
   * @param name dossier
   * @return the draft
   * @throws InputRefusedException if there is none, or the file was altered
   */
  public StoredCurve draft(String name) {
    return folder(name).draft();
  }

  /**
   * The analysis behind the draft: that of the readings, exclusions, certificates and roles as they
   * were when it was kept, with the choice of model that it records.
   *
   * @param name dossier
   * @return the analysis
   * @throws InputRefusedException if there is no draft
   */
  public Analysis draftAnalysis(String name) {
    return folder(name).draftAnalysis();
  }

  /**
   * Computes the draft again from its kept inputs and compares.
   *
   * @param name dossier
   * @return same bytes, close, or what differs
   * @throws InputRefusedException if there is no draft, or an input was altered
   */
  public Recomputation recompute(String name) {
    return folder(name).recompute();
  }

  /**
   * Where a report of the draft is kept.
   *
   * @param name dossier
   * @return file beside the draft
   */
  public Path draftReport(String name) {
    return folder(name).path("draft/report.html");
  }

  /**
   * Checks the chain of hashes of a dossier's history, and names the first damage.
   *
   * @param name dossier
   * @return the verdict with the hash of the last event
   */
  public ChainState verifyChain(String name) {
    return unchecked(FolderNames.dossier(name)).chain();
  }

  /**
   * Checks the chain of hashes of the blocks' history, and names the first damage.
   *
   * @return the verdict with the hash of the last event
   */
  public ChainState verifyBlockChain() {
    return shelf.chain();
  }

  /**
   * Head of a dossier's history: the hash of its last event, which covers all before it.
   *
   * @param name dossier
   * @return 64 hexadecimal digits
   */
  public String head(String name) {
    return folder(name).chain().head();
  }
}
