package fettle.library;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.refusal.InputRefusedException;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The fields of one JSON object of a file, read with exact complaints.
 *
 * @param object the object
 * @param file file name for messages
 * @param path where the object stands in the file, for example {@code /limits/curve-en}
 */
record Fields(ObjectNode object, String file, String path) {

  Fields(ObjectNode object, String file) {
    this(object, file, "");
  }

  String where(String name) {
    return file + ", " + path + "/" + name;
  }

  InputRefusedException refusal(String name, String what, String expected) {
    return new InputRefusedException(
        what, where(name), expected, "correct the file, or restore it from a backup");
  }

  /** Refuses keys that nobody reads: a misspelt key would silently do nothing. */
  void allow(List<String> names) {
    for (Iterator<String> keys = object.fieldNames(); keys.hasNext(); ) {
      String key = keys.next();
      if (!names.contains(key)) {
        throw refusal(
            key,
            "The key \"" + key + "\" is not known here.",
            "one of " + String.join(", ", names));
      }
    }
  }

  boolean has(String name) {
    return object.hasNonNull(name);
  }

  String text(String name) {
    return optionalText(name)
        .orElseThrow(() -> refusal(name, "The text \"" + name + "\" is missing.", "a text"));
  }

  Optional<String> optionalText(String name) {
    if (!has(name)) {
      return Optional.empty();
    }
    JsonNode node = object.get(name);
    if (!node.isTextual() || node.asText().isBlank()) {
      throw refusal(name, "The value " + node + " is not a text.", "a text, not blank");
    }
    return Optional.of(node.asText());
  }

  double number(String name) {
    return optionalNumber(name)
        .orElseThrow(() -> refusal(name, "The number \"" + name + "\" is missing.", "a number"));
  }

  OptionalDouble optionalNumber(String name) {
    if (!has(name)) {
      return OptionalDouble.empty();
    }
    JsonNode node = object.get(name);
    if (!node.isNumber() || !Double.isFinite(node.asDouble())) {
      throw refusal(name, "The value " + node + " is not a number.", "a finite number");
    }
    return OptionalDouble.of(node.asDouble());
  }

  OptionalInt optionalWhole(String name) {
    OptionalDouble number = optionalNumber(name);
    if (number.isEmpty()) {
      return OptionalInt.empty();
    }
    double value = number.getAsDouble();
    if (value != Math.rint(value) || value < 0 || value > Integer.MAX_VALUE) {
      throw refusal(name, "The value " + value + " is not a whole number.", "0, 1, 2 …");
    }
    return OptionalInt.of((int) value);
  }

  boolean flag(String name, boolean absent) {
    if (!has(name)) {
      return absent;
    }
    JsonNode node = object.get(name);
    if (!node.isBoolean()) {
      throw refusal(name, "The value " + node + " is not true or false.", "true or false");
    }
    return node.asBoolean();
  }

  Optional<LocalDate> optionalDate(String name) {
    Optional<String> text = optionalText(name);
    try {
      return text.map(LocalDate::parse);
    } catch (DateTimeParseException failure) {
      throw refusal(name, "\"" + text.get() + "\" is not a date.", "a date as yyyy-mm-dd");
    }
  }

  Optional<Fields> optionalObject(String name) {
    if (!has(name)) {
      return Optional.empty();
    }
    if (object.get(name) instanceof ObjectNode child) {
      return Optional.of(new Fields(child, file, path + "/" + name));
    }
    throw refusal(name, "The value is not an object.", "an object in braces");
  }

  List<Fields> objects(String name) {
    JsonNode node = object.get(name);
    if (node == null || !node.isArray()) {
      throw refusal(name, "The list \"" + name + "\" is missing.", "a list in brackets");
    }
    List<Fields> list = new java.util.ArrayList<>();
    for (int i = 0; i < node.size(); i++) {
      if (!(node.get(i) instanceof ObjectNode child)) {
        throw refusal(name + "/" + i, "The entry is not an object.", "an object in braces");
      }
      list.add(new Fields(child, file, path + "/" + name + "/" + i));
    }
    return list;
  }
}
