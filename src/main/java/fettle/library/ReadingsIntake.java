package fettle.library;

import fettle.reading.Reading;
import fettle.reading.ReadingsCsv;
import fettle.refusal.InputRefusedException;
import fettle.table.NearMatch;
import fettle.table.Shown;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;

/** Readings files on their way in: each is looked through before any is kept. */
final class ReadingsIntake {
  /** Fewer readings than this may agree by chance. */
  private static final int FEWEST_TO_COMPARE = 5;

  private final SortedMap<String, String> kept;
  private final Function<String, List<Reading>> readingsOf;
  private final Set<String> blocks;
  private final SortedMap<String, byte[]> added = new TreeMap<>();
  private final Map<String, List<Reading>> taken = new LinkedHashMap<>();
  private final SortedMap<String, byte[]> unchanged = new TreeMap<>();

  /**
   * Begins.
   *
   * @param kept hash by name of the files that are there
   * @param readingsOf readings by name of a file that is there
   * @param blocks marks of the laboratory's blocks
   */
  ReadingsIntake(
      SortedMap<String, String> kept,
      Function<String, List<Reading>> readingsOf,
      Set<String> blocks) {
    this.kept = kept;
    this.readingsOf = readingsOf;
    this.blocks = blocks;
  }

  /** Files that are to be kept, by the name under which. */
  SortedMap<String, byte[]> added() {
    return added;
  }

  /** Files that are there already. */
  SortedMap<String, byte[]> unchanged() {
    return unchanged;
  }

  void take(Map<String, byte[]> files) {
    files.forEach(this::take);
  }

  private void take(String given, byte[] bytes) {
    String name = FolderNames.readings(given);
    String shown = Shown.plain(given);
    List<Reading> readings = ReadingsCsv.read(bytes, shown).readings();
    readings.forEach(reading -> requireKnown(reading, shown));
    requireNoOtherCase(name, shown);
    if (added.containsKey(name) || unchanged.containsKey(name)) {
      throw new InputRefusedException(
          "Two of the files would be kept as " + name + ".",
          shown,
          "a name of its own for each file",
          "rename one of them");
    }
    String before = kept.get(name);
    if (before == null) {
      kept.keySet().forEach(other -> requireNew(readings, shown, readingsOf.apply(other), other));
      taken.forEach((other, earlier) -> requireNew(readings, shown, earlier, other));
      taken.put(name, readings);
      added.put(name, bytes);
    } else if (before.equals(Json.sha256(bytes))) {
      unchanged.put(name, bytes);
    } else {
      throw new InputRefusedException(
          "The dossier has a readings file " + name + " already, with other contents.",
          shown,
          "the same file as before, or a new name; what was kept is never rewritten",
          "rename the file; readings kept by mistake are left out one by one, with a reason");
    }
  }

  private void requireKnown(Reading reading, String shown) {
    if (!blocks.contains(reading.block())) {
      List<String> known = List.copyOf(blocks);
      throw new InputRefusedException(
          "The laboratory has no block " + Shown.quoted(reading.block()) + ".",
          shown + ", line " + reading.line() + ", column block",
          "the mark of a block that was added before its readings",
          NearMatch.of(reading.block(), known)
              .map(near -> "did you mean \"" + near + "\"? Nothing was added")
              .orElse("add the block first, or correct its mark; nothing was added"));
    }
  }

  /** The same readings under another name would count twice and make the mean look better known. */
  private static void requireNew(
      List<Reading> readings, String shown, List<Reading> others, String other) {
    Set<Reading> known = new HashSet<>();
    others.forEach(reading -> known.add(withoutPlace(reading)));
    long again = readings.stream().filter(one -> known.contains(withoutPlace(one))).count();
    if (readings.size() >= FEWEST_TO_COMPARE && 2 * again > readings.size()) {
      throw new InputRefusedException(
          again + " of the " + readings.size() + " readings are in " + other + " already.",
          shown,
          "readings that the dossier does not have yet",
          "add only new readings; nothing was added");
    }
  }

  private static Reading withoutPlace(Reading reading) {
    return new Reading(
        "",
        0,
        reading.block(),
        reading.displayed(),
        reading.takenAt(),
        reading.run(),
        reading.operator(),
        reading.probe(),
        reading.temperatureC(),
        reading.freeFrequencyHz(),
        reading.xMm(),
        reading.yMm(),
        reading.direction(),
        Optional.empty());
  }

  private void requireNoOtherCase(String name, String shown) {
    for (String other : kept.keySet()) {
      if (other.equalsIgnoreCase(name) && !other.equals(name)) {
        throw new InputRefusedException(
            "The name differs only in case from " + other + ", which is there.",
            shown,
            "names that every file system tells apart",
            "rename the file");
      }
    }
  }
}
