package fettle.library;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.refusal.InputRefusedException;
import fettle.table.Shown;

/**
 * The name and number by which a file says what it is.
 *
 * @param name name of the format
 * @param number the only number read and written so far
 * @param title what such a file is, for messages
 */
record FileFormat(String name, int number, String title) {
  static final FileFormat BLOCK = new FileFormat("fettle-block", 1, "a reference block");
  static final FileFormat DOSSIER = new FileFormat("fettle-dossier", 1, "a dossier");
  static final FileFormat POLICY = new FileFormat("fettle-policy", 1, "a policy");
  static final FileFormat CURVE = new FileFormat("fettle-curve", 1, "a curve");
  static final FileFormat EVENT = new FileFormat("fettle-event", 1, "an event of a history");

  private static final String FORMAT = "format";
  private static final String VERSION = "formatVersion";

  /** An object that begins with name and number. */
  ObjectNode begin() {
    return Json.object().put(FORMAT, name).put(VERSION, number);
  }

  /** Reads a file of this format; refuses another kind, and a number too old or too new. */
  StrictObject read(byte[] bytes, String file) {
    ObjectNode node = Json.parse(bytes, file);
    JsonNode found = node.get(FORMAT);
    if (found == null || !found.isTextual() || !found.textValue().equals(name)) {
      throw new InputRefusedException(
          found == null
              ? "The file does not say what it is."
              : "The file is of another kind: " + Shown.quoted(found.asText()) + ".",
          file,
          title + ": \"format\": \"" + name + "\", \"formatVersion\": " + number,
          "name a file that holds " + title);
    }
    JsonNode seen = node.get(VERSION);
    if (seen == null || !seen.isIntegralNumber() || !seen.canConvertToInt()) {
      throw new InputRefusedException(
          "The file does not say which number its format has.",
          file + ", at $." + VERSION,
          "\"formatVersion\": " + number,
          "take the file anew from where it was written");
    }
    if (seen.intValue() != number) {
      boolean newer = seen.intValue() > number;
      throw new InputRefusedException(
          "The file is of format number "
              + seen.intValue()
              + ", which is too "
              + (newer ? "new." : "old."),
          file + ", at $." + VERSION,
          "format number " + number,
          newer
              ? "use a newer version of the program"
              : "take the file anew from where it was written");
    }
    return new StrictObject(node, file, "$").known(FORMAT, VERSION);
  }
}
