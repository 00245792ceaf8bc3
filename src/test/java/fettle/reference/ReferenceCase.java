package fettle.reference;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/**
 * One published case from the test resources: data, settings and expected numbers, with citation.
 *
 * <p>Places in the file are JSON pointers ({@code /expected/levels/0/s_r}). Of an expected number
 * the independent high-precision recomputation is taken where the file has one.
 */
public final class ReferenceCase {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final String path;
  private final JsonNode root;

  private ReferenceCase(String path, JsonNode root) {
    this.path = path;
    this.root = root;
  }

  /**
   * An expected number.
   *
   * @param value the recomputed number, or the only one there is
   * @param printed the source's text, null when nothing is printed
   * @param roundsToPrinted false where the recomputed number is known not to round to the text
   */
  public record Expected(double value, String printed, boolean roundsToPrinted) {
    /** Half a unit of the last printed digit. */
    public double halfPrintedUnit() {
      String[] parts = printed.split("[eE]");
      int point = parts[0].indexOf('.');
      int decimals = point < 0 ? 0 : parts[0].length() - point - 1;
      int exponent = parts.length > 1 ? Integer.parseInt(parts[1]) : 0;
      return 0.5 * Math.pow(10, exponent - decimals);
    }
  }

  /** Reads a case from the class path, e.g. {@code /fettle/statistics/reference/x.json}. */
  public static ReferenceCase load(String path) {
    try (InputStream in = ReferenceCase.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalArgumentException("no reference case at " + path);
      }
      return new ReferenceCase(path, MAPPER.readTree(in));
    } catch (IOException e) {
      throw new UncheckedIOException(path, e);
    }
  }

  /** The node at a pointer; the test fails if there is none. */
  public JsonNode at(String pointer) {
    JsonNode node = root.at(pointer);
    if (node.isMissingNode()) {
      throw new IllegalArgumentException(path + " holds nothing at " + pointer);
    }
    return node;
  }

  /** Number of entries of the array or object at a pointer. */
  public int size(String pointer) {
    return at(pointer).size();
  }

  /** An array of numbers, plain or expected ones. */
  public double[] column(String pointer) {
    JsonNode node = at(pointer);
    double[] column = new double[node.size()];
    for (int i = 0; i < column.length; i++) {
      column[i] = expected(node.get(i)).value();
    }
    return column;
  }

  /** An array of arrays, or an object of arrays in file order. */
  public double[][] columns(String pointer) {
    List<double[]> columns = new ArrayList<>();
    for (JsonNode node : at(pointer)) {
      double[] column = new double[node.size()];
      for (int i = 0; i < column.length; i++) {
        column[i] = node.get(i).doubleValue();
      }
      columns.add(column);
    }
    return columns.toArray(double[][]::new);
  }

  /** One number: the recomputed one of an expected number, or the plain one. */
  public double number(String pointer) {
    return expected(at(pointer)).value();
  }

  /** One expected number with what its source prints. */
  public Expected expected(String pointer) {
    return expected(at(pointer));
  }

  private Expected expected(JsonNode node) {
    if (node.isNumber()) {
      return new Expected(node.doubleValue(), null, true);
    }
    if (!node.isObject()) {
      throw new IllegalArgumentException(path + ": not a number: " + node);
    }
    double value =
        node.has("recomputed")
            ? Double.parseDouble(node.get("recomputed").textValue())
            : node.get("value").doubleValue();
    return new Expected(
        value, node.path("printed").textValue(), node.path("rounds_to_printed").asBoolean(true));
  }
}
