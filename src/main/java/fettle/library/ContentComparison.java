package fettle.library;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/** Compares two contents place by place. */
final class ContentComparison {
  private static final int MOST = 20;

  private final List<String> differences = new ArrayList<>();
  private double largest;

  private ContentComparison() {}

  static Recomputation of(JsonNode kept, JsonNode again, String program) {
    if (java.util.Arrays.equals(Json.canonical(kept), Json.canonical(again))) {
      return new Recomputation(true, 0, List.of(), "recomputed, the same bytes.");
    }
    ContentComparison comparison = new ContentComparison();
    // What came in first: it explains what came out.
    comparison.compare(kept.get("inputs"), again.get("inputs"), "/inputs");
    comparison.compare(without(kept), without(again), "");
    boolean close = comparison.largest <= 1e-12 && comparison.differences.isEmpty();
    return new Recomputation(
        false,
        comparison.largest,
        comparison.differences,
        close
            ? "the same within a relative 1e-12; it was made by " + program + "."
            : "recomputed, and it differs from what was kept (made by "
                + program
                + "): "
                + String.join("; ", comparison.differences)
                + ".");
  }

  private static JsonNode without(JsonNode content) {
    ObjectNode rest = content.deepCopy();
    rest.remove("inputs");
    return rest;
  }

  private void compare(JsonNode kept, JsonNode again, String path) {
    if (again == null || kept == null) {
      note(path, kept, again);
    } else if (kept.isNumber() && again.isNumber()) {
      double a = kept.asDouble();
      double b = again.asDouble();
      double relative = a == b ? 0 : Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b));
      largest = Math.max(largest, relative);
      if (relative > 1e-12) {
        note(path, kept, again);
      }
    } else if (kept.isObject() && again.isObject()) {
      for (Iterator<String> names = kept.fieldNames(); names.hasNext(); ) {
        String name = names.next();
        compare(kept.get(name), again.get(name), path + "/" + name);
      }
      for (Iterator<String> names = again.fieldNames(); names.hasNext(); ) {
        String name = names.next();
        if (!kept.has(name)) {
          note(path + "/" + name, null, again.get(name));
        }
      }
    } else if (kept.isArray() && again.isArray() && kept.size() == again.size()) {
      for (int i = 0; i < kept.size(); i++) {
        compare(kept.get(i), again.get(i), path + "/" + i);
      }
    } else if (!kept.equals(again)) {
      note(path, kept, again);
    }
  }

  private void note(String path, JsonNode kept, JsonNode again) {
    if (differences.size() < MOST) {
      differences.add(path + " was " + brief(kept) + ", is " + brief(again));
    }
  }

  private static String brief(JsonNode node) {
    String text = node == null ? "absent" : node.toString();
    return text.length() <= 60 ? text : text.substring(0, 57) + "…";
  }
}
