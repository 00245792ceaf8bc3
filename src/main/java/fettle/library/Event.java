package fettle.library;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One line of a history.
 *
 * @param seq number, from 1
 * @param at when
 * @param type what happened, such as {@code readings-added}
 * @param by person, where one is named
 * @param data what the type calls for
 * @param files what files hold from here on
 * @param previous hash of the line before; 64 zeros in the first
 */
record Event(
    long seq,
    Instant at,
    String type,
    Optional<String> by,
    ObjectNode data,
    List<FileMark> files,
    String previous) {
  /** What stands for the hash of a line before the first. */
  static final String BEGINNING = "0".repeat(64);

  Event {
    files = List.copyOf(files);
  }

  /** The line without its end, in canonical form. */
  byte[] line() {
    ObjectNode node = FileFormat.EVENT.begin();
    node.put("seq", seq).put("at", at.toString()).put("type", type);
    by.ifPresent(person -> node.put("by", person));
    node.set("data", data);
    ArrayNode marks = node.putArray("files");
    for (FileMark mark : files) {
      marks.addObject().put("path", mark.path()).put("sha256", mark.sha256());
    }
    node.put("previous", previous);
    return Json.canonical(node);
  }

  /** Reads a line; refuses what is no event. */
  static Event read(byte[] line, String where) {
    StrictObject object = FileFormat.EVENT.read(line, where);
    List<FileMark> marks = new ArrayList<>();
    for (StrictObject mark : object.objects("files")) {
      marks.add(new FileMark(mark.text("path"), mark.hash("sha256")));
      mark.nothingElse();
    }
    Event event =
        new Event(
            object.integer("seq"),
            object.instant("at"),
            object.text("type"),
            object.optionalText("by"),
            object.object("data").node(),
            marks,
            object.hash("previous"));
    object.nothingElse();
    return event;
  }
}
