package fettle.library;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * A history: one event a line, each carrying the SHA-256 of the line before, so that a change, a
 * loss or an exchange of lines shows.
 *
 * <p>A line is written whole and forced to disk. A crash while writing leaves a last line without
 * its line end: that action was never acknowledged, and the next writer cuts it off.
 */
final class History {
  private static final String START = "0".repeat(64);

  private final Path file;
  private final DurableFiles files;

  History(Path file, DurableFiles files) {
    this.file = file;
    this.files = files;
  }

  /**
   * One event.
   *
   * @param sequence 1 for the first
   * @param at when
   * @param type what sort
   * @param data what about it
   */
  record Event(long sequence, Instant at, String type, ObjectNode data) {}

  /**
   * Reads and verifies all events.
   *
   * @return in order
   * @throws InputRefusedException at the first line that does not fit the one before
   */
  List<Event> read() {
    List<Event> events = new ArrayList<>();
    String previous = START;
    for (String line : wholeLines()) {
      String where = file.getFileName() + ", line " + (events.size() + 1);
      ObjectNode node = Json.read(Json.utf8(line), where);
      Json.requireFormat(node, "fettle-event", 1, where);
      Fields fields = new Fields(node, where);
      if (!fields.text("previous").equals(previous)
          || fields.number("sequence") != events.size() + 1) {
        throw new InputRefusedException(
            "The history is broken: this line does not follow the one before.",
            file + ", line " + (events.size() + 1),
            "a line that carries the hash of the line before it",
            "restore the file from a backup; lines before this one can still be trusted");
      }
      previous = Json.sha256(Json.utf8(line));
      events.add(
          new Event(
              events.size() + 1,
              Instant.parse(fields.text("at")),
              fields.text("type"),
              fields.optionalObject("data").map(Fields::object).orElseGet(Json::object)));
    }
    return events;
  }

  /** Hash of the last line: what a report prints so that it exists outside the folder. */
  String head() {
    List<String> lines = wholeLines();
    return lines.isEmpty() ? START : Json.sha256(Json.utf8(lines.get(lines.size() - 1)));
  }

  /** Appends an event; the caller holds the folder's lock. */
  void append(Instant at, String type, ObjectNode data) {
    List<Event> before = read();
    ObjectNode node = Json.object();
    node.put("format", "fettle-event").put("formatVersion", 1);
    node.put("sequence", before.size() + 1).put("at", at.toString()).put("type", type);
    node.set("data", data);
    node.put("previous", head());
    String line = new String(Json.canonical(node), StandardCharsets.UTF_8) + "\n";
    String text = text();
    if (!text.isEmpty() && !text.endsWith("\n")) {
      files.write(file, Json.utf8(text.substring(0, text.lastIndexOf('\n') + 1)));
    }
    files.appendLine(file, Json.utf8(line));
  }

  private List<String> wholeLines() {
    String text = text();
    int end = text.lastIndexOf('\n');
    return end < 0 ? List.of() : List.of(text.substring(0, end).split("\n", -1));
  }

  private String text() {
    try {
      return Files.exists(file) ? Files.readString(file, StandardCharsets.UTF_8) : "";
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }
}
