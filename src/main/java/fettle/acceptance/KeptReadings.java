package fettle.acceptance;

import fettle.block.BlockRole;
import fettle.block.ReferenceBlock;
import fettle.calibration.Campaign;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The readings that count, run by run in the order in which they were taken.
 *
 * @param runs readings by run, in order of the run's first line; readings without a run are one run
 * @param roles role of every block
 */
record KeptReadings(Map<String, List<Reading>> runs, Map<String, BlockRole> roles) {
  /** Name of readings that name no run. */
  static final String UNNAMED = "(one run)";

  static KeptReadings of(Evidence evidence) {
    Campaign campaign = evidence.analysis().campaign();
    Map<String, BlockRole> roles = new LinkedHashMap<>();
    for (ReferenceBlock block : campaign.blocks()) {
      roles.put(block.id(), campaign.dossier().roleOf(block));
    }
    Map<String, List<Reading>> runs = new LinkedHashMap<>();
    for (Reading reading : campaign.readings()) {
      if (!campaign.isExcluded(reading)) {
        runs.computeIfAbsent(reading.run().orElse(UNNAMED), run -> new ArrayList<>()).add(reading);
      }
    }
    // Times order a run only where all its readings have one; else the file does.
    for (List<Reading> run : runs.values()) {
      if (run.stream().allMatch(reading -> reading.takenAt().isPresent())) {
        run.sort(Comparator.comparing(reading -> reading.takenAt().orElseThrow()));
      }
    }
    return new KeptReadings(runs, roles);
  }

  List<Reading> all() {
    return runs.values().stream().flatMap(List::stream).toList();
  }

  boolean isOf(Reading reading, BlockRole role) {
    return roles.get(reading.block()) == role;
  }

  /** Whether a reading bears on the curve: on a block that shapes or proves it. */
  boolean bears(Reading reading) {
    return isOf(reading, BlockRole.FIT) || isOf(reading, BlockRole.CHECK);
  }

  static String runText(String run) {
    return run.equals(UNNAMED) ? "The run without a name" : "Run " + run;
  }

  static String place(Reading reading) {
    return reading.file() + ", line " + reading.line();
  }
}
