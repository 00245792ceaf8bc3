package fettle.demo;

import fettle.block.BlockRole;
import fettle.reading.Reading;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * All readings of one member: four runs on four days, operators alternating, each block read three
 * times in each run, hence twelve times; and one later reverification on the check blocks, five
 * readings by each operator.
 *
 * <p>Blocks and runs are fully crossed and the cells are equal, so that the run effect can be told
 * from the blocks. Each day belongs to one operator; with two days an operator the two effects can
 * be told apart, though roughly.
 */
final class Campaign {
  static final List<String> OPERATORS = List.of("Operator Amber", "Operator Slate");
  static final int RUNS = 4;
  static final int PER_BLOCK_AND_RUN = 3;
  static final String REVERIFICATION_FILE = "reverification-1.csv";
  private static final int PER_CHECK_BLOCK = 5;
  private static final LocalTime MORNING = LocalTime.of(8, 30);

  private final MemberPlan plan;
  private final List<SimulatedBlock> bronze;
  private final List<SimulatedBlock> steel;
  private final Map<String, List<SimulatedReading>> files;

  private Campaign(
      MemberPlan plan,
      List<SimulatedBlock> bronze,
      List<SimulatedBlock> steel,
      Map<String, List<SimulatedReading>> files) {
    this.plan = plan;
    this.bronze = List.copyOf(bronze);
    this.steel = List.copyOf(steel);
    this.files = Collections.unmodifiableMap(files);
  }

  /**
   * Simulates the campaign.
   *
   * @param places places left on every block; used up
   */
  static Campaign simulated(
      long seed,
      MemberPlan plan,
      List<SimulatedBlock> bronze,
      List<SimulatedBlock> steel,
      Map<String, PlaceSequence> places,
      PlantedFaults faults) {
    Map<String, List<SimulatedReading>> files = new LinkedHashMap<>();
    for (int i = 0; i < RUNS; i++) {
      String name = "run-" + (i + 1);
      Run run =
          new Run(
              name + ".csv",
              2,
              name,
              OPERATORS.get(i % OPERATORS.size()),
              plan.firstDay().plusDays(i).atTime(MORNING),
              PER_BLOCK_AND_RUN);
      files.put(run.file(), run.taken(seed, plan, bronze, steel, places, faults));
    }
    List<SimulatedBlock> checks =
        bronze.stream().filter(block -> block.block().defaultRole() == BlockRole.CHECK).toList();
    List<SimulatedReading> reverification = new ArrayList<>();
    for (int i = 0; i < OPERATORS.size(); i++) {
      Run run =
          new Run(
              REVERIFICATION_FILE,
              2 + reverification.size(),
              "reverification-1-" + (i + 1),
              OPERATORS.get(i),
              plan.reverifiedOn().atTime(MORNING).plusHours(3L * i),
              PER_CHECK_BLOCK);
      reverification.addAll(run.taken(seed, plan, checks, steel, places, faults));
    }
    files.put(REVERIFICATION_FILE, reverification);
    return new Campaign(plan, bronze, steel, files);
  }

  MemberPlan plan() {
    return plan;
  }

  List<SimulatedBlock> bronze() {
    return bronze;
  }

  List<SimulatedBlock> steel() {
    return steel;
  }

  /** Readings by name of file, in the order of the files' days; the reverification last. */
  Map<String, List<SimulatedReading>> files() {
    return files;
  }

  /** Readings of the four runs. */
  List<SimulatedReading> runs() {
    return files.entrySet().stream()
        .filter(file -> !file.getKey().equals(REVERIFICATION_FILE))
        .flatMap(file -> file.getValue().stream())
        .toList();
  }

  /** Readings of a file as the file has them. */
  List<Reading> readings(String file) {
    return files.get(file).stream().map(SimulatedReading::reading).toList();
  }

  /** The dossier this campaign is for. */
  DemoDossier dossier() {
    Map<String, BlockRole> roles = new LinkedHashMap<>();
    bronze.forEach(block -> roles.put(block.block().id(), block.block().defaultRole()));
    steel.forEach(block -> roles.put(block.block().id(), block.block().defaultRole()));
    Instrument instrument = Instrument.of(plan.method());
    return new DemoDossier(
        plan.name(),
        plan.title(),
        plan.method(),
        plan.scale(),
        plan.material(),
        instrument.testForceNewtons(),
        instrument.zeroFrequencyHz(),
        instrument.probe(),
        instrument.title(),
        roles,
        files.keySet().stream().filter(file -> !file.equals(REVERIFICATION_FILE)).toList(),
        REVERIFICATION_FILE);
  }
}
