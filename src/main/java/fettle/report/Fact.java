package fettle.report;

import java.util.List;
import java.util.Optional;

/**
 * A line of a list of facts.
 *
 * @param label what it is
 * @param value what it says
 */
public record Fact(String label, String value) {
  static Fact orUnstated(String label, Optional<String> value) {
    return new Fact(label, value.orElse("not stated"));
  }

  static void addIfPresent(List<Fact> facts, String label, Optional<String> value) {
    value.ifPresent(text -> facts.add(new Fact(label, text)));
  }
}
