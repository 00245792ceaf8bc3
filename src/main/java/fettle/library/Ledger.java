package fettle.library;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.refusal.InputRefusedException;
import fettle.table.Shown;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * A folder whose files are what its history says.
 *
 * <p>A change is made in three steps: each new file is written in full beside its place, as {@code
 * <name>.pending}; the event is appended, with the hash of each file; the files are moved into
 * place. The line feed of the event is the moment of change. Whatever is found pending later is
 * moved into place if the history holds its hash, and removed if not; so a crash at any instant
 * leaves the old state or the new one.
 */
final class Ledger {
  private static final String PENDING = ".pending";

  private final Path directory;
  private final History history;
  private final FileOperations operations;
  private final FolderLock lock;
  private final Clock clock;

  Ledger(Path directory, FileOperations operations, FolderLock lock, Clock clock) {
    this.directory = directory;
    this.history = new History(directory);
    this.operations = operations;
    this.lock = lock;
    this.clock = clock;
  }

  Path directory() {
    return directory;
  }

  List<Event> events() {
    return history.read().events();
  }

  ChainState chain() {
    return history.examine().state();
  }

  /** Does something while nobody else changes the folder, after what a crash left is put right. */
  <T> T changing(Supplier<T> work) {
    return lock.holding(
        () -> {
          repair();
          return work.get();
        });
  }

  /** Makes one change; to be called inside {@link #changing}. */
  void commit(String type, Optional<String> by, ObjectNode data, SortedMap<String, byte[]> files) {
    try {
      operations.createDirectories(directory);
      List<FileMark> marks = new ArrayList<>();
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Path place = directory.resolve(file.getKey());
        operations.createDirectories(place.getParent());
        operations.writeForced(pending(place), file.getValue());
        marks.add(new FileMark(file.getKey(), Json.sha256(file.getValue())));
      }
      History.Reading before = history.read();
      Event event =
          new Event(
              before.events().size() + 1L,
              Instant.now(clock).truncatedTo(ChronoUnit.MILLIS),
              type,
              by,
              data,
              marks,
              before.state().head());
      operations.appendForced(history.file(), before.length(), withLineFeed(event.line()));
      operations.forceDirectory(directory);
      for (FileMark mark : marks) {
        place(directory.resolve(mark.path()));
      }
    } catch (IOException failure) {
      throw unwritable(failure);
    }
  }

  private void place(Path place) throws IOException {
    operations.moveIntoPlace(pending(place), place);
    operations.forceDirectory(place.getParent());
  }

  private static Path pending(Path place) {
    return place.resolveSibling(place.getFileName() + PENDING);
  }

  private static byte[] withLineFeed(byte[] line) {
    byte[] bytes = Arrays.copyOf(line, line.length + 1);
    bytes[line.length] = '\n';
    return bytes;
  }

  /** Finishes or forgets a change that a crash interrupted. */
  private void repair() {
    List<Path> found = pendingFiles();
    if (found.isEmpty()) {
      return;
    }
    Map<String, String> marks = marks(events());
    try {
      for (Path file : found) {
        String name = file.getFileName().toString();
        Path place = file.resolveSibling(name.substring(0, name.length() - PENDING.length()));
        if (Json.sha256(Files.readAllBytes(file)).equals(marks.get(pathOf(place)))) {
          place(place);
        } else {
          operations.delete(file);
        }
      }
    } catch (IOException failure) {
      throw unwritable(failure);
    }
  }

  private List<Path> pendingFiles() {
    if (!Files.isDirectory(directory)) {
      return List.of();
    }
    try (Stream<Path> files = Files.walk(directory, 2)) {
      return files.filter(file -> file.toString().endsWith(PENDING)).sorted().toList();
    } catch (IOException failure) {
      throw unreadable(directory, failure);
    }
  }

  private String pathOf(Path place) {
    return directory.relativize(place).toString().replace('\\', '/');
  }

  /** What each file holds after some events: its hash by its path. */
  static Map<String, String> marks(List<Event> events) {
    Map<String, String> marks = new HashMap<>();
    for (Event event : events) {
      event.files().forEach(mark -> marks.put(mark.path(), mark.sha256()));
    }
    return marks;
  }

  /** The bytes of a file, which are those that the history holds the hash of. */
  byte[] read(String path) {
    return sound(path)
        .or(() -> changing(() -> sound(path)))
        .orElseThrow(() -> altered(directory.resolve(path)));
  }

  /** The bytes of all files by path, in order of path. */
  SortedMap<String, byte[]> readAll() {
    SortedMap<String, byte[]> files = new TreeMap<>();
    marks(events())
        .forEach((path, hash) -> files.put(path, sound(path, hash).orElseGet(() -> read(path))));
    return files;
  }

  private Optional<byte[]> sound(String path) {
    String expected = marks(events()).get(path);
    if (expected == null) {
      throw new IllegalArgumentException("path " + path + ": a file of the history expected");
    }
    return sound(path, expected);
  }

  private Optional<byte[]> sound(String path, String expected) {
    try {
      byte[] bytes = Files.readAllBytes(directory.resolve(path));
      return Optional.of(bytes).filter(found -> Json.sha256(found).equals(expected));
    } catch (NoSuchFileException missing) {
      return Optional.empty();
    } catch (IOException failure) {
      throw unreadable(directory.resolve(path), failure);
    }
  }

  private static InputRefusedException altered(Path file) {
    return new InputRefusedException(
        Files.exists(file)
            ? "The file is not the one that was written: it has been altered or damaged."
            : "The file is missing.",
        file.toString(),
        "the bytes whose SHA-256 stands in " + History.FILE,
        "put the file back from a backup; changes are made by the program only");
  }

  static InputRefusedException unreadable(Path file, IOException failure) {
    return failed("The file cannot be read", file, "a file that can be read", failure);
  }

  private InputRefusedException unwritable(IOException failure) {
    return failed(
        "The laboratory folder cannot be written to, and what was begun is undone or finished at"
            + " the next change",
        directory,
        "a folder in which files may be written",
        failure);
  }

  private static InputRefusedException failed(
      String what, Path where, String expected, IOException failure) {
    InputRefusedException refusal =
        new InputRefusedException(
            what + ": " + Shown.plain(String.valueOf(failure.getMessage())) + ".",
            where.toString(),
            expected,
            "check permissions, free space and the network share");
    refusal.initCause(failure);
    return refusal;
  }
}
