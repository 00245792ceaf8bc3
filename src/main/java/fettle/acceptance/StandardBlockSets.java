package fettle.acceptance;

import fettle.block.BlockRole;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The sets of readings on standard blocks in one run: consecutive readings on one block, with the
 * alloy's readings between two sets.
 *
 * @param beforeFirst whether a set comes before the run's first reading on the alloy
 * @param sets sets by standard block, in order
 */
record StandardBlockSets(boolean beforeFirst, Map<String, List<List<Reading>>> sets) {
  static StandardBlockSets of(KeptReadings readings, List<Reading> run) {
    Map<String, List<List<Reading>>> sets = new LinkedHashMap<>();
    Map<String, Integer> stretchOfLast = new LinkedHashMap<>();
    boolean alloySeen = false;
    boolean before = false;
    int stretch = 0;
    for (Reading reading : run) {
      if (readings.bears(reading)) {
        alloySeen = true;
        stretch++;
      } else if (readings.isOf(reading, BlockRole.STANDARD)) {
        before |= !alloySeen;
        List<List<Reading>> own = sets.computeIfAbsent(reading.block(), b -> new ArrayList<>());
        if (own.isEmpty() || stretchOfLast.get(reading.block()) != stretch) {
          own.add(new ArrayList<>());
          stretchOfLast.put(reading.block(), stretch);
        }
        own.get(own.size() - 1).add(reading);
      }
    }
    return new StandardBlockSets(before, sets);
  }
}
