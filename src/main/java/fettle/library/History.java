package fettle.library;

import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A history file: one event a line, each carrying the SHA-256 of the line before.
 *
 * <p>An event has happened once its line feed is written; a last line without one is none.
 */
final class History {
  static final String FILE = "history.jsonl";

  private static final int LARGEST = 256 << 20;

  private final Path file;

  History(Path directory) {
    this.file = directory.resolve(FILE);
  }

  Path file() {
    return file;
  }

  /**
   * A reading of the file.
   *
   * @param events sound events
   * @param length bytes that they fill
   * @param state verdict on the chain
   */
  record Reading(List<Event> events, long length, ChainState state) {}

  /** The events; refuses a chain that is broken. */
  Reading read() {
    Reading reading = examine();
    reading
        .state()
        .damage()
        .ifPresent(
            damage -> {
              throw new InputRefusedException(
                  "The history has been altered or damaged: " + damage,
                  file.toString(),
                  "events numbered from 1, each with the hash of the line before",
                  "put the history back from a backup");
            });
    return reading;
  }

  /** The sound events from the first on, and what is wrong after them. */
  Reading examine() {
    byte[] bytes = bytes();
    List<Event> events = new ArrayList<>();
    String head = Event.BEGINNING;
    int from = 0;
    Optional<String> damage = Optional.empty();
    for (int i = 0; i < bytes.length && damage.isEmpty(); i++) {
      if (bytes[i] == '\n') {
        byte[] line = Arrays.copyOfRange(bytes, from, i);
        int number = events.size() + 1;
        damage = take(line, number, head, events);
        if (damage.isEmpty()) {
          head = Json.sha256(line);
          from = i + 1;
        }
      }
    }
    boolean unfinished = damage.isEmpty() && from < bytes.length;
    return new Reading(
        List.copyOf(events), from, new ChainState(events.size(), head, damage, unfinished));
  }

  private Optional<String> take(byte[] line, int number, String head, List<Event> events) {
    Event event;
    try {
      event = Event.read(line, file + ", line " + number);
    } catch (InputRefusedException unfit) {
      return Optional.of("line " + number + ": " + unfit.what());
    }
    if (event.seq() != number) {
      return Optional.of("line " + number + " holds event " + event.seq() + ".");
    }
    if (!event.previous().equals(head)) {
      return Optional.of(
          number == 1
              ? "line 1 says that a line went before it."
              : "line " + (number - 1) + " is not the one that line " + number + " followed.");
    }
    if (!Arrays.equals(event.line(), line)) {
      return Optional.of("line " + number + " is not in the form in which events are written.");
    }
    events.add(event);
    return Optional.empty();
  }

  private byte[] bytes() {
    try {
      if (Files.size(file) > LARGEST) {
        throw new InputRefusedException(
            "The history is larger than 256 MiB.",
            file.toString(),
            "a history, seldom above 1 MiB",
            "put the history back from a backup");
      }
      return Files.readAllBytes(file);
    } catch (NoSuchFileException none) {
      return new byte[0];
    } catch (IOException failure) {
      throw Ledger.unreadable(file, failure);
    }
  }
}
