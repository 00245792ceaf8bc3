package fettle.library;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.calibration.Calibration;
import fettle.calibration.Campaign;
import fettle.calibration.Dossier;
import fettle.policy.Policy;
import fettle.quantity.HardnessScale;
import fettle.reading.Exclusion;
import fettle.reading.Reading;
import fettle.reading.ReadingsCsv;
import fettle.refusal.InputRefusedException;
import fettle.table.Shown;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** One dossier as it is kept: what its history says, and the files that go with it. */
final class DossierFolder {
  private static final String DOSSIER = "dossier.json";
  private static final String POLICY = "policy.json";
  private static final String DRAFT = "draft/curve.json";

  private final String name;
  private final Ledger ledger;
  private final BlockShelf shelf;

  DossierFolder(String name, Ledger ledger, BlockShelf shelf) {
    this.name = name;
    this.ledger = ledger;
    this.shelf = shelf;
  }

  /** Whether anything ever happened in it, damaged since or not. */
  boolean exists() {
    ChainState chain = chain();
    return chain.events() > 0 || !chain.isSound();
  }

  ChainState chain() {
    return ledger.chain();
  }

  Path path(String file) {
    return ledger.directory().resolve(file);
  }

  private String where() {
    return "dossier " + name;
  }

  void begin(DossierJson dossier, Optional<byte[]> policy) {
    ledger.changing(
        () -> {
          if (exists()) {
            throw new InputRefusedException(
                "A dossier named " + name + " exists.",
                ledger.directory().toString(),
                "a name that is not taken",
                "choose another name");
          }
          SortedMap<String, byte[]> files = new TreeMap<>();
          files.put(DOSSIER, dossier.write());
          policy.ifPresent(bytes -> files.put(POLICY, bytes));
          ledger.commit(DossierState.BEGUN, Optional.empty(), Json.object(), files);
          return dossier;
        });
  }

  private DossierState state() {
    return stateAfter(ledger.events());
  }

  private DossierState stateAfter(List<Event> events) {
    return DossierState.of(events, path(History.FILE).toString());
  }

  private DossierJson file() {
    return DossierJson.read(ledger.read(DOSSIER), path(DOSSIER).toString());
  }

  private boolean has(String file) {
    return Ledger.marks(ledger.events()).containsKey(file);
  }

  Dossier dossier() {
    DossierJson file = file();
    Policy policy =
        has(POLICY) ? PolicyFile.read(ledger.read(POLICY), path(POLICY).toString()) : Policy.EMPTY;
    return new Dossier(file.identity(), file.roles(), policy);
  }

  void assignRole(String block, BlockRole role) {
    ledger.changing(
        () -> {
          shelf.get(block);
          DossierJson before = file();
          SortedMap<String, BlockRole> roles = new TreeMap<>(before.roles());
          if (role != roles.put(block, role)) {
            SortedMap<String, byte[]> files = new TreeMap<>();
            files.put(DOSSIER, before.with(roles).write());
            ObjectNode data = Json.object().put("block", block).put("role", role.id());
            ledger.commit(DossierState.ROLE, Optional.empty(), data, files);
          }
          return roles;
        });
  }

  AddedReadings addReadings(Map<String, byte[]> files) {
    return ledger.changing(
        () -> {
          ReadingsIntake intake =
              new ReadingsIntake(state().readings(), this::readings, shelf.shelf().keySet());
          intake.take(files);
          if (!intake.added().isEmpty()) {
            SortedMap<String, byte[]> placed = new TreeMap<>();
            intake
                .added()
                .forEach((file, bytes) -> placed.put(DossierState.READINGS_FOLDER + file, bytes));
            ledger.commit(DossierState.READINGS, Optional.empty(), Json.object(), placed);
          }
          return new AddedReadings(
              List.copyOf(intake.added().keySet()),
              List.copyOf(intake.unchanged().keySet()),
              readings(state()).size());
        });
  }

  private List<Reading> readings(DossierState state) {
    List<Reading> readings = new ArrayList<>();
    for (String file : state.readings().keySet()) {
      readings.addAll(readings(file));
    }
    return readings;
  }

  private List<Reading> readings(String file) {
    return ReadingsCsv.read(ledger.read(DossierState.READINGS_FOLDER + file), file).readings();
  }

  boolean usesBlock(String block) {
    DossierState state = state();
    return state.roles().containsKey(block)
        || readings(state).stream().anyMatch(reading -> reading.block().equals(block));
  }

  void exclude(String file, int line, String by, String reason) {
    decide(DossierState.EXCLUDED, file, line, by, reason);
  }

  void include(String file, int line, String by, String reason) {
    decide(DossierState.INCLUDED, file, line, by, reason);
  }

  private void decide(String type, String file, int line, String by, String reason) {
    requireWords("by", by, "the person who decides");
    requireWords("reason", reason, "that person's reason, in words");
    ledger.changing(
        () -> {
          DossierState state = state();
          requireReading(state, file, line);
          boolean excluded = state.isExcluded(file, line);
          if (excluded == type.equals(DossierState.EXCLUDED)) {
            throw new InputRefusedException(
                "The reading is " + (excluded ? "left out already." : "not left out."),
                where() + ", " + file + ", line " + line,
                excluded ? "a reading that is in the fit" : "a reading that was left out",
                "nothing is left to be done");
          }
          ObjectNode data = Json.object().put("file", file).put("line", line).put("reason", reason);
          ledger.commit(type, Optional.of(by), data, new TreeMap<>());
          return data;
        });
  }

  private void requireWords(String what, String text, String expected) {
    if (text.isBlank()) {
      throw new InputRefusedException(
          "A reading is left out or taken in by a person and for a reason; " + what + " is blank.",
          where(),
          expected,
          "state it");
    }
  }

  private void requireReading(DossierState state, String file, int line) {
    if (!state.readings().containsKey(file)) {
      throw new InputRefusedException(
          "The dossier holds no readings file named " + Shown.plain(file) + ".",
          where(),
          state.readings().isEmpty()
              ? "a readings file that was added; there is none yet"
              : "one of " + String.join(", ", state.readings().keySet()),
          "name one of them");
    }
    List<Reading> readings = readings(file);
    if (readings.stream().noneMatch(reading -> reading.line() == line)) {
      throw new InputRefusedException(
          "Line " + line + " of " + file + " holds no reading.",
          where(),
          "lines "
              + readings.get(0).line()
              + " to "
              + readings.get(readings.size() - 1).line()
              + "; the header is line 1",
          "look the line up in the file");
    }
  }

  Campaign campaign() {
    return campaign(state(), Optional.empty());
  }

  /** The campaign of a state, with the certificates that a curve names if it is one of old. */
  private Campaign campaign(DossierState state, Optional<StoredCurve> curve) {
    Dossier now = dossier();
    List<Reading> readings = readings(state);
    Set<String> marks = new LinkedHashSet<>(readings.stream().map(Reading::block).toList());
    SortedMap<String, ReferenceBlock> all = shelf.shelf();
    List<ReferenceBlock> blocks = new ArrayList<>();
    for (ReferenceBlock block : all.values()) {
      if (marks.contains(block.id())) {
        blocks.add(curve.map(kept -> asOf(kept, block)).orElse(block));
      }
    }
    return new Campaign(
        new Dossier(now.identity(), state.roles(), now.policy()),
        blocks,
        readings,
        state.exclusions());
  }

  /** A block with the certificates that it had on the curve's scale when the curve was kept. */
  private static ReferenceBlock asOf(StoredCurve curve, ReferenceBlock block) {
    HardnessScale scale = curve.curve().identity().scale();
    List<Certificate> then = new ArrayList<>();
    boolean later = false;
    for (Certificate certificate : block.certificates()) {
      boolean ofScale = certificate.scale().equals(scale);
      if (!ofScale || !later) {
        then.add(certificate);
      }
      later |= ofScale && wasInForce(curve, block.id(), certificate);
    }
    return later ? BlockMerge.withCertificates(block, then) : block;
  }

  private static boolean wasInForce(StoredCurve curve, String block, Certificate certificate) {
    return curve
        .inputs()
        .contains(new InputFingerprint("block-certificate", block, fingerprint(certificate)));
  }

  private static String fingerprint(Certificate certificate) {
    return Json.sha256(Json.canonical(BlockJson.certificate(certificate)));
  }

  StoredCurve keepDraft(Analysis analysis, String program) {
    return ledger.changing(
        () -> {
          if (!analysis.campaign().equals(campaign())) {
            throw new InputRefusedException(
                "The dossier has changed since the fit was made.",
                where(),
                "a fit of the readings, exclusions, blocks and roles as they are now",
                "fit again");
          }
          if (analysis.chosen().isEmpty()) {
            throw new InputRefusedException(
                "No model is recommended and none was chosen, so that there is no draft to keep: "
                    + analysis.recommendation().reason(),
                where(),
                "a model that qualifies, or one that a person chooses for a reason",
                "look at the candidates, and choose a model with --model, --by and --reason");
          }
          ObjectNode content = CurveContent.of(analysis, inputs(state(), analysis));
          SortedMap<String, byte[]> files = new TreeMap<>();
          files.put(DRAFT, CurveJson.write(name, "draft", program, content));
          ObjectNode data =
              Json.object()
                  .put("model", content.get("model").textValue())
                  .put("fingerprint", Json.sha256(Json.canonical(content)));
          Optional<String> by = analysis.chosen().get().choice().map(choice -> choice.by());
          ledger.commit(DossierState.DRAFT, by, data, files);
          return draft();
        });
  }

  private List<InputFingerprint> inputs(DossierState state, Analysis analysis) {
    List<InputFingerprint> inputs = new ArrayList<>();
    state
        .readings()
        .forEach((file, sha256) -> inputs.add(new InputFingerprint("readings", file, sha256)));
    ObjectNode roles = Json.object();
    for (BlockResponse block : analysis.blocks()) {
      String id = block.block().id();
      inputs.add(new InputFingerprint("block-certificate", id, fingerprint(block.certificate())));
      roles.put(id, block.role().id());
    }
    inputs.add(new InputFingerprint("roles", "roles", Json.sha256(Json.canonical(roles))));
    if (has(POLICY)) {
      inputs.add(new InputFingerprint("policy", POLICY, Ledger.marks(ledger.events()).get(POLICY)));
    }
    ArrayNode exclusions = Json.array();
    for (Exclusion one : state.exclusions()) {
      exclusions
          .addObject()
          .put("file", one.file())
          .put("line", one.line())
          .put("by", one.by())
          .put("reason", one.reason());
    }
    inputs.add(
        new InputFingerprint("exclusions", "exclusions", Json.sha256(Json.canonical(exclusions))));
    return inputs;
  }

  boolean hasDraft() {
    return has(DRAFT);
  }

  StoredCurve draft() {
    return CurveJson.read(draftBytes(), path(DRAFT));
  }

  private byte[] draftBytes() {
    if (!hasDraft()) {
      throw new InputRefusedException(
          "Dossier " + name + " has no draft.",
          path(DRAFT).toString(),
          "a draft, which a fit keeps",
          "fit the dossier first");
    }
    return ledger.read(DRAFT);
  }

  /** The dossier as it stood when its draft was kept. */
  private DossierState stateOfDraft() {
    List<Event> events = ledger.events();
    int end = events.size();
    while (!events.get(end - 1).type().equals(DossierState.DRAFT)) {
      end--;
    }
    return stateAfter(events.subList(0, end));
  }

  Analysis draftAnalysis() {
    StoredCurve draft = draft();
    return Calibration.analyse(campaign(stateOfDraft(), Optional.of(draft)), draft.choice());
  }

  Recomputation recompute() {
    ObjectNode kept = CurveJson.content(draftBytes(), path(DRAFT).toString());
    Analysis again = draftAnalysis();
    if (again.chosen().isEmpty()) {
      return new Recomputation(
          false,
          Double.POSITIVE_INFINITY,
          List.of("$.model was " + kept.get("model") + ", is absent"),
          "recomputed, and no model is recommended any more: " + again.recommendation().reason());
    }
    return ContentComparison.of(
        kept, CurveContent.of(again, inputs(stateOfDraft(), again)), draft().program());
  }
}
