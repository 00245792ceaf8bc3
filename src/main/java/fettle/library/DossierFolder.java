package fettle.library;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.reading.Exclusion;
import fettle.reading.Reading;
import fettle.reading.ReadingsCsv;
import fettle.reading.ReadingsFile;
import fettle.refusal.InputRefusedException;
import fettle.table.InputFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** One dossier's folder: its readings, exclusions and history. */
final class DossierFolder {
  private static final Pattern FILE_NAME =
      Pattern.compile("[A-Za-z0-9][A-Za-z0-9 ._()+-]{0,118}\\.[Cc][Ss][Vv]");

  /** Fewer readings than this may agree by chance. */
  private static final int FEWEST_TO_COMPARE = 5;

  private final String name;
  private final Path folder;
  private final DurableFiles files;
  private final History history;

  DossierFolder(Path home, String name, DurableFiles files) {
    this.name = name;
    this.folder = home.resolve("curves").resolve(name);
    this.files = files;
    this.history = new History(folder.resolve("history.jsonl"), files);
  }

  Path folder() {
    return folder;
  }

  History history() {
    return history;
  }

  Path file() {
    return folder.resolve("dossier.json");
  }

  Path policyFile() {
    return folder.resolve("policy.json");
  }

  Path draftFile() {
    return folder.resolve("draft").resolve("curve.json");
  }

  private Path readingsFolder() {
    return folder.resolve("readings");
  }

  /** Every readings file, by name, its bytes as recorded when it was added. */
  List<ReadingsFile> readings() {
    if (!Files.isDirectory(readingsFolder())) {
      return List.of();
    }
    List<ReadingsFile> list = new ArrayList<>();
    try (Stream<Path> entries = Files.list(readingsFolder())) {
      for (Path file :
          entries
              .filter(entry -> !DurableFiles.isLeftOver(entry))
              .sorted(Comparator.comparing(entry -> entry.getFileName().toString()))
              .toList()) {
        list.add(ReadingsCsv.read(InputFile.bytes(file), file.getFileName().toString()));
      }
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
    requireAsRecorded(list);
    return list;
  }

  /** A file that was changed, added or removed by hand is not what the history says. */
  private void requireAsRecorded(List<ReadingsFile> found) {
    Map<String, String> recorded = new java.util.TreeMap<>();
    for (History.Event event : history.read()) {
      if (event.type().equals("readings-added")) {
        recorded.put(event.data().path("file").asText(), event.data().path("sha256").asText());
      }
    }
    for (ReadingsFile file : found) {
      String expected = recorded.remove(file.file());
      if (!file.sha256().equals(expected)) {
        throw new InputRefusedException(
            expected == null
                ? "The readings file " + file.file() + " was put here by hand."
                : "The readings file " + file.file() + " was changed after it was added.",
            readingsFolder().resolve(file.file()).toString(),
            expected == null ? "files added with a command" : "SHA-256 " + expected,
            expected == null
                ? "take it out and add it with `fettle readings add " + name + " FILE.csv`"
                : "restore it from a backup; it has now SHA-256 " + file.sha256());
      }
    }
    if (!recorded.isEmpty()) {
      String missing = recorded.keySet().iterator().next();
      throw new InputRefusedException(
          "The readings file " + missing + " is missing.",
          readingsFolder().resolve(missing).toString(),
          "every readings file that was added",
          "restore it from a backup");
    }
  }

  AddedReadings add(Map<String, byte[]> contents, Set<String> knownBlocks, Instant at) {
    List<ReadingsFile> present = readings();
    List<ReadingsFile> fresh = new ArrayList<>();
    List<String> unchanged = new ArrayList<>();
    contents.forEach(
        (fileName, bytes) -> {
          requireFileName(fileName);
          ReadingsFile file = ReadingsCsv.read(bytes, fileName);
          requireKnown(file, knownBlocks);
          ReadingsFile same = find(present, fileName);
          if (same == null) {
            requireNew(file, present);
            fresh.add(file);
          } else if (same.sha256().equals(file.sha256())) {
            unchanged.add(fileName);
          } else {
            throw new InputRefusedException(
                "The dossier holds another file named " + fileName + ".",
                fileName,
                "readings files are never rewritten",
                "give the new file another name");
          }
        });
    for (ReadingsFile file : fresh) {
      // The event comes first on disk only when its file is there: a crash between leaves a file
      // without event, which the next opening names.
      files.write(readingsFolder().resolve(file.file()), contents.get(file.file()));
      history.append(
          at,
          "readings-added",
          Json.object()
              .put("file", file.file())
              .put("sha256", file.sha256())
              .put("readings", file.readings().size()));
    }
    int total = 0;
    for (ReadingsFile file : readings()) {
      total += file.readings().size();
    }
    return new AddedReadings(fresh.stream().map(ReadingsFile::file).toList(), unchanged, total);
  }

  private static void requireFileName(String fileName) {
    if (!FILE_NAME.matcher(fileName).matches()) {
      throw new InputRefusedException(
          "The file name cannot be kept as it is.",
          fileName,
          "letters, digits, spaces and . _ - + ( ), at most 120 characters, ending in .csv",
          "rename the file");
    }
  }

  private static void requireKnown(ReadingsFile file, Set<String> knownBlocks) {
    for (Reading reading : file.readings()) {
      if (!knownBlocks.contains(reading.block())) {
        throw new InputRefusedException(
            "Block \"" + reading.block() + "\" is not in the laboratory's reference blocks.",
            reading.file() + ", line " + reading.line() + ", column block",
            "a block that was added before its readings",
            "add it with `fettle block add`, or correct its name in the file; nothing was added");
      }
    }
  }

  /** The same readings under another name would count twice and make the mean look better known. */
  private static void requireNew(ReadingsFile file, List<ReadingsFile> present) {
    if (file.readings().size() < FEWEST_TO_COMPARE) {
      return;
    }
    for (ReadingsFile other : present) {
      Set<Reading> known = new java.util.HashSet<>();
      other.readings().forEach(reading -> known.add(nowhere(reading)));
      long repeated =
          file.readings().stream().filter(reading -> known.contains(nowhere(reading))).count();
      if (2 * repeated > file.readings().size()) {
        throw new InputRefusedException(
            repeated
                + " of the "
                + file.readings().size()
                + " readings of "
                + file.file()
                + " are in "
                + other.file()
                + " already.",
            file.file(),
            "readings that are not in the dossier yet",
            "add only new readings; nothing was added");
      }
    }
  }

  /** The reading without its place in a file. */
  private static Reading nowhere(Reading reading) {
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
        java.util.Optional.empty());
  }

  private static ReadingsFile find(List<ReadingsFile> list, String fileName) {
    for (ReadingsFile file : list) {
      if (file.file().equals(fileName)) {
        return file;
      }
    }
    return null;
  }

  /** The exclusions in force, replayed from the history. */
  List<Exclusion> exclusions() {
    List<Exclusion> inForce = new ArrayList<>();
    for (History.Event event : history.read()) {
      Fields fields = new Fields(event.data(), history.toString());
      switch (event.type()) {
        case "reading-excluded" ->
            inForce.add(
                new Exclusion(
                    fields.text("file"),
                    (int) fields.number("line"),
                    fields.text("by"),
                    fields.text("reason"),
                    event.at()));
        case "reading-included" ->
            inForce.removeIf(
                one ->
                    one.file().equals(fields.text("file"))
                        && one.line() == (int) fields.number("line"));
        default -> {
          // Other events do not concern readings left out.
        }
      }
    }
    return inForce;
  }

  void exclude(String file, int line, String by, String reason, Instant at) {
    requireReading(file, line);
    requireWords(by, reason);
    if (isExcluded(file, line)) {
      throw new InputRefusedException(
          "Line " + line + " of " + file + " is left out already.",
          "dossier " + name,
          "a reading that is in the fit",
          "nothing is left to do");
    }
    history.append(at, "reading-excluded", decision(file, line, by, reason));
  }

  void include(String file, int line, String by, String reason, Instant at) {
    requireReading(file, line);
    requireWords(by, reason);
    if (!isExcluded(file, line)) {
      throw new InputRefusedException(
          "Line " + line + " of " + file + " is not left out.",
          "dossier " + name,
          "a reading that was excluded",
          "nothing is left to do");
    }
    history.append(at, "reading-included", decision(file, line, by, reason));
  }

  private static ObjectNode decision(String file, int line, String by, String reason) {
    return Json.object().put("file", file).put("line", line).put("by", by).put("reason", reason);
  }

  private static void requireWords(String by, String reason) {
    if (by.isBlank() || reason.isBlank()) {
      throw new InputRefusedException(
          "A reading is left out or taken in by a person, with a reason.",
          by.isBlank() ? "option --by" : "option --reason",
          "words",
          "say who decides and why");
    }
  }

  private boolean isExcluded(String file, int line) {
    return exclusions().stream().anyMatch(one -> one.file().equals(file) && one.line() == line);
  }

  private void requireReading(String file, int line) {
    ReadingsFile found = find(readings(), file);
    if (found == null) {
      throw new InputRefusedException(
          "The dossier holds no readings file named " + file + ".",
          "dossier " + name,
          "one of " + String.join(", ", readings().stream().map(ReadingsFile::file).toList()),
          "name one of them");
    }
    if (found.readings().stream().noneMatch(reading -> reading.line() == line)) {
      throw new InputRefusedException(
          "Line " + line + " of " + file + " holds no reading.",
          "dossier " + name,
          "lines "
              + found.readings().get(0).line()
              + " to "
              + found.readings().get(found.readings().size() - 1).line()
              + "; the header is line 1",
          "look the line up in the file");
    }
  }
}
