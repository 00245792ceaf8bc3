package fettle.reading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * All readings of one block: those kept for the fit and those left out for a stated reason.
 *
 * @param block block read
 * @param kept in the order in which they came
 * @param excluded in the order in which they came
 */
public record BlockReadings(String block, List<Reading> kept, List<Reading> excluded) {
  /** Checks and copies. */
  public BlockReadings {
    Objects.requireNonNull(block);
    kept = List.copyOf(kept);
    excluded = List.copyOf(excluded);
  }

  /** A reading's address, to find its exclusion. */
  private record Place(String file, int line) {}

  /**
   * Sorts readings by block.
   *
   * @param readings readings of one or several files
   * @param exclusions readings to leave out
   * @return one for each block, in the order of its first reading; kept may be empty
   */
  public static List<BlockReadings> group(List<Reading> readings, List<Exclusion> exclusions) {
    Map<Place, Exclusion> excludedPlaces = new LinkedHashMap<>();
    for (Exclusion exclusion : exclusions) {
      excludedPlaces.put(new Place(exclusion.file(), exclusion.line()), exclusion);
    }
    Map<String, List<Reading>> kept = new LinkedHashMap<>();
    Map<String, List<Reading>> excluded = new LinkedHashMap<>();
    for (Reading reading : readings) {
      List<Reading> keptOfBlock = kept.computeIfAbsent(reading.block(), b -> new ArrayList<>());
      List<Reading> excludedOfBlock =
          excluded.computeIfAbsent(reading.block(), b -> new ArrayList<>());
      boolean out = excludedPlaces.containsKey(new Place(reading.file(), reading.line()));
      (out ? excludedOfBlock : keptOfBlock).add(reading);
    }
    return kept.entrySet().stream()
        .map(e -> new BlockReadings(e.getKey(), e.getValue(), excluded.get(e.getKey())))
        .toList();
  }

  /**
   * Responses of the kept readings.
   *
   * @param zeroFrequencyHz the dossier's zero frequency in Hz, where it has one
   * @return in the dossier's response unit
   */
  public double[] responses(OptionalDouble zeroFrequencyHz) {
    return kept.stream().mapToDouble(reading -> reading.response(zeroFrequencyHz)).toArray();
  }

  /**
   * Mean and spread of the kept readings.
   *
   * @param zeroFrequencyHz the dossier's zero frequency in Hz, where it has one
   * @return empty if none is kept
   */
  public Optional<BlockMean> mean(OptionalDouble zeroFrequencyHz) {
    return kept.isEmpty()
        ? Optional.empty()
        : Optional.of(BlockMean.of(block, responses(zeroFrequencyHz)));
  }

  /**
   * The kept readings by run.
   *
   * @return in the order of each run's first reading
   */
  public List<RunReadings> byRun() {
    Map<Optional<String>, List<Reading>> runs = new LinkedHashMap<>();
    for (Reading reading : kept) {
      runs.computeIfAbsent(reading.run(), run -> new ArrayList<>()).add(reading);
    }
    return runs.entrySet().stream()
        .map(entry -> new RunReadings(entry.getKey(), entry.getValue()))
        .toList();
  }
}
