package fettle.library;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/** Compares two contents place by place. */
final class ContentComparison {
  private static final double CLOSE = 1e-12;
  private static final int MOST = 20;
  private static final int LONGEST = 60;

  private final List<String> differences = new ArrayList<>();
  private double largest;

  private ContentComparison() {}

  static Recomputation of(JsonNode kept, JsonNode again, String program) {
    if (Arrays.equals(Json.canonical(kept), Json.canonical(again))) {
      return new Recomputation(true, 0, List.of(), "recomputed, the same bytes.");
    }
    ContentComparison comparison = new ContentComparison();
    comparison.compare(kept, again, "$");
    List<String> differences = comparison.differences;
    return new Recomputation(
        false,
        comparison.largest,
        differences,
        differences.isEmpty()
            ? "recomputed, the same within a relative 1e-12; it was made by " + program + "."
            : "recomputed, and it differs from what was kept by "
                + program
                + ": "
                + String.join("; ", differences)
                + ".");
  }

  private void compare(JsonNode kept, JsonNode again, String path) {
    if (kept == null || again == null) {
      note(path, kept, again);
    } else if (kept.isNumber() && again.isNumber()) {
      compare(kept.doubleValue(), again.doubleValue(), path);
    } else if (kept.isObject() && again.isObject()) {
      TreeSet<String> names = new TreeSet<>();
      kept.fieldNames().forEachRemaining(names::add);
      again.fieldNames().forEachRemaining(names::add);
      names.forEach(name -> compare(kept.get(name), again.get(name), path + "." + name));
    } else if (kept.isArray() && again.isArray()) {
      for (int i = 0; i < Math.max(kept.size(), again.size()); i++) {
        compare(kept.get(i), again.get(i), path + "[" + i + "]");
      }
    } else if (!kept.equals(again)) {
      note(path, kept, again);
    }
  }

  private void compare(double kept, double again, String path) {
    if (kept != again) {
      double relative = Math.abs(kept - again) / Math.max(Math.abs(kept), Math.abs(again));
      largest = Math.max(largest, relative);
      if (relative > CLOSE) {
        note(path, Json.number(kept), Json.number(again));
      }
    }
  }

  private void note(String path, JsonNode kept, JsonNode again) {
    if (differences.size() < MOST) {
      differences.add(path + " was " + brief(kept) + ", is " + brief(again));
    }
  }

  private static String brief(JsonNode node) {
    String text = node == null ? "absent" : node.toString();
    return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "…";
  }
}
