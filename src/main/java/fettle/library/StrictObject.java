package fettle.library;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.refusal.InputRefusedException;
import fettle.table.NearMatch;
import fettle.table.Shown;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * One JSON object with its place in a file. Each question names the field; {@link #nothingElse}
 * refuses the fields that nobody asked for. An absent field and a null are the same.
 */
final class StrictObject {
  private static final int LONGEST_TEXT = 10_000;
  private static final String CORRECT = "correct it";

  private final ObjectNode node;
  private final String file;
  private final String path;
  private final Set<String> asked = new LinkedHashSet<>();

  StrictObject(ObjectNode node, String file, String path) {
    this.node = node;
    this.file = file;
    this.path = path;
  }

  StrictObject known(String... names) {
    asked.addAll(List.of(names));
    return this;
  }

  ObjectNode node() {
    return node;
  }

  String where(String name) {
    return file + ", at " + path + "." + Shown.plain(name);
  }

  boolean has(String name) {
    asked.add(name);
    return node.hasNonNull(name);
  }

  private JsonNode field(String name, String expected) {
    if (!has(name)) {
      throw new InputRefusedException(name + " is missing.", where(name), expected, "add it");
    }
    return node.get(name);
  }

  InputRefusedException refusal(String name, String what, String expected) {
    return new InputRefusedException(what, where(name), expected, CORRECT);
  }

  private InputRefusedException unfit(String name, String expected) {
    String seen = node.get(name).isContainerNode() ? "a list or object" : node.get(name).toString();
    return refusal(name, name + " is " + Shown.plain(seen) + ".", expected);
  }

  String text(String name) {
    String expected = "a text in quotation marks, not blank";
    JsonNode field = field(name, expected);
    if (!field.isTextual() || field.textValue().isBlank()) {
      throw unfit(name, expected);
    }
    if (field.textValue().length() > LONGEST_TEXT) {
      throw refusal(name, name + " is longer than " + LONGEST_TEXT + " characters.", expected);
    }
    return field.textValue();
  }

  Optional<String> optionalText(String name) {
    return has(name) ? Optional.of(text(name)) : Optional.empty();
  }

  boolean truth(String name) {
    JsonNode field = field(name, "true or false");
    if (!field.isBoolean()) {
      throw unfit(name, "true or false");
    }
    return field.booleanValue();
  }

  /** The number with all its digits; finite as a double. */
  BigDecimal decimal(String name) {
    JsonNode field = field(name, "a number");
    if (!field.isNumber() || !Double.isFinite(field.doubleValue())) {
      throw unfit(name, "a number");
    }
    return field.decimalValue();
  }

  double number(String name) {
    return decimal(name).doubleValue();
  }

  OptionalDouble optionalNumber(String name) {
    return has(name) ? OptionalDouble.of(number(name)) : OptionalDouble.empty();
  }

  double positive(String name) {
    double value = number(name);
    if (!(value > 0)) {
      throw unfit(name, "a number above 0");
    }
    return value;
  }

  int integer(String name) {
    JsonNode field = field(name, "a whole number");
    if (!field.isIntegralNumber() || !field.canConvertToInt()) {
      throw unfit(name, "a whole number");
    }
    return field.intValue();
  }

  OptionalInt optionalInteger(String name) {
    return has(name) ? OptionalInt.of(integer(name)) : OptionalInt.empty();
  }

  LocalDate date(String name) {
    try {
      return LocalDate.parse(text(name));
    } catch (DateTimeException unreadable) {
      throw unfit(name, "a date such as 2026-05-31");
    }
  }

  Optional<LocalDate> optionalDate(String name) {
    return has(name) ? Optional.of(date(name)) : Optional.empty();
  }

  Instant instant(String name) {
    try {
      return Instant.parse(text(name));
    } catch (DateTimeException unreadable) {
      throw unfit(name, "a time such as 2026-05-31T08:15:00Z");
    }
  }

  String hash(String name) {
    String hash = text(name);
    if (!hash.matches("[0-9a-f]{64}")) {
      throw unfit(name, "64 hexadecimal digits in lower case");
    }
    return hash;
  }

  StrictObject object(String name) {
    if (field(name, "an object in braces") instanceof ObjectNode child) {
      return new StrictObject(child, file, path + "." + name);
    }
    throw unfit(name, "an object in braces");
  }

  Optional<StrictObject> optionalObject(String name) {
    return has(name) ? Optional.of(object(name)) : Optional.empty();
  }

  List<StrictObject> objects(String name) {
    JsonNode field = field(name, "a list in brackets");
    if (!field.isArray()) {
      throw unfit(name, "a list in brackets");
    }
    List<StrictObject> objects = new ArrayList<>();
    for (int i = 0; i < field.size(); i++) {
      if (!(field.get(i) instanceof ObjectNode child)) {
        throw refusal(name, "Element " + i + " is no object.", "a list of objects in braces");
      }
      objects.add(new StrictObject(child, file, path + "." + name + "[" + i + "]"));
    }
    return objects;
  }

  /** The names of all fields, for an object whose names are data. */
  List<String> names() {
    List<String> names = new ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }

  /** Refuses a field that was never asked for, with the name that was probably meant. */
  void nothingElse() {
    for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!asked.contains(name)) {
        List<String> known = List.copyOf(asked);
        throw new InputRefusedException(
            Shown.quoted(name) + " is not known here.",
            where(name),
            String.join(", ", known),
            NearMatch.of(name, known)
                .map(near -> "did you mean \"" + near + "\"?")
                .orElse("take it out, or correct its name"));
      }
    }
  }
}
