package fettle.curve;

import fettle.refusal.InputRefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The fields of one JSON object with its place in the file; refuses what is missing or amiss. */
final class JsonFields {
  private final Map<?, ?> fields;
  private final String file;
  private final String path;

  private JsonFields(Map<?, ?> fields, String file, String path) {
    this.fields = fields;
    this.file = file;
    this.path = path;
  }

  static JsonFields of(Object value, String file, String path) {
    if (value instanceof Map<?, ?> fields) {
      return new JsonFields(fields, file, path);
    }
    throw refusal(file, path, "an object in braces");
  }

  private static InputRefusedException refusal(String file, String path, String expected) {
    return new InputRefusedException(
        "The file is well-formed, but does not hold what a curve file holds.",
        file + ", at " + path,
        expected,
        CurveFile.FETCH);
  }

  InputRefusedException refusal(String key, String expected) {
    return refusal(file, path(key), expected);
  }

  String where(String key) {
    return file + ", at " + path(key);
  }

  private String path(String key) {
    return path + "." + key;
  }

  boolean has(String key) {
    return fields.get(key) != null;
  }

  JsonFields object(String key) {
    return of(fields.get(key), file, path(key));
  }

  List<JsonFields> objects(String key) {
    List<?> elements = list(key);
    List<JsonFields> objects = new ArrayList<>();
    for (int i = 0; i < elements.size(); i++) {
      objects.add(of(elements.get(i), file, path(key) + "[" + i + "]"));
    }
    return objects;
  }

  private List<?> list(String key) {
    if (fields.get(key) instanceof List<?> elements) {
      return elements;
    }
    throw refusal(key, "a list in brackets");
  }

  String text(String key) {
    if (fields.get(key) instanceof String text) {
      return text;
    }
    throw refusal(key, "a text in quotation marks");
  }

  Optional<String> optionalText(String key) {
    return has(key) ? Optional.of(text(key)) : Optional.empty();
  }

  boolean truth(String key) {
    if (fields.get(key) instanceof Boolean truth) {
      return truth;
    }
    throw refusal(key, "true or false");
  }

  double number(String key) {
    if (fields.get(key) instanceof Double number) {
      return number;
    }
    throw refusal(key, "a number");
  }

  OptionalDouble optionalNumber(String key) {
    return has(key) ? OptionalDouble.of(number(key)) : OptionalDouble.empty();
  }

  /** A list of exactly so many numbers. */
  double[] numbers(String key, int length) {
    return numbers(list(key), path(key), length);
  }

  /** A list of lists of numbers, each of that length. */
  List<double[]> rows(String key, int length) {
    List<double[]> rows = new ArrayList<>();
    List<?> elements = list(key);
    for (int i = 0; i < elements.size(); i++) {
      String place = path(key) + "[" + i + "]";
      if (!(elements.get(i) instanceof List<?> row)) {
        throw refusal(file, place, "a list in brackets");
      }
      rows.add(numbers(row, place, length));
    }
    return rows;
  }

  private double[] numbers(List<?> elements, String place, int length) {
    if (elements.size() != length) {
      throw refusal(file, place, length + " numbers");
    }
    double[] numbers = new double[length];
    for (int i = 0; i < length; i++) {
      if (!(elements.get(i) instanceof Double number)) {
        throw refusal(file, place + "[" + i + "]", "a number");
      }
      numbers[i] = number;
    }
    return numbers;
  }
}
