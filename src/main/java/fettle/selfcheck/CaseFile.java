package fettle.selfcheck;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A case as it is kept: citation, data as printed decimals, expected values.
 *
 * @param root the file's one object
 */
record CaseFile(JsonNode root) {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** Names of all cases, in the order in which they are shown. */
  static List<String> names() {
    return new String(bytes("cases.txt"), StandardCharsets.UTF_8).lines().toList();
  }

  static CaseFile named(String name) {
    try {
      return new CaseFile(MAPPER.readTree(bytes(name + ".json")));
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  private static byte[] bytes(String name) {
    try (InputStream in = CaseFile.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("no resource " + name + " beside " + CaseFile.class);
      }
      return in.readAllBytes();
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  String text(String field) {
    return root.get(field).textValue();
  }

  long number(String field) {
    return root.get(field).longValue();
  }

  boolean has(String column) {
    return root.path("data").has(column);
  }

  BigDecimal[] decimals(String column) {
    JsonNode node = root.get("data").get(column);
    BigDecimal[] values = new BigDecimal[node.size()];
    Arrays.setAll(values, i -> new BigDecimal(node.get(i).textValue()));
    return values;
  }

  double[] column(String column) {
    return Arrays.stream(decimals(column)).mapToDouble(BigDecimal::doubleValue).toArray();
  }

  double[][] allColumns() {
    List<double[]> columns = new ArrayList<>();
    root.get("data").fieldNames().forEachRemaining(name -> columns.add(column(name)));
    return columns.toArray(double[][]::new);
  }

  Iterable<JsonNode> expected() {
    return root.get("expected");
  }
}
