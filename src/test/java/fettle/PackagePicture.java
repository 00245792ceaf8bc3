package fettle;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which package of ours may know which, from left to right through the job.
 *
 * <p>Every package may know {@code refusal}, which knows nothing. A package that is not in this
 * picture is an error: put it here and in DEVELOPERS.md, with a decision in docs/decisions.
 */
final class PackagePicture {
  private static final Map<String, Set<String>> KNOWS = new LinkedHashMap<>();

  static {
    knows("refusal");
    knows("quantity");
    knows("table");
    knows("statistics");
    knows("fit", "statistics");
    knows("uncertainty", "fit", "statistics");
    knows("policy", "quantity");
    knows("block", "quantity", "table");
    knows("reading", "quantity", "table", "statistics", "block");
    knows("curve", "quantity", "fit", "statistics");
    knowsAllAbove("calibration");
    knowsAllAbove("acceptance");
    knows("record", "curve", "acceptance");
    knowsAllAbove("reverification", "family", "planning");
    knowsAllAbove("library");
    knowsAllAboveBut("library", "export", "report");
    knowsAllAbove("demo");
    // Proves the numbers on the user's machine: must not lean on what is built upon them.
    knows("selfcheck", "statistics", "fit", "uncertainty");
    knowsAllAbove("cli");
    knowsAllAboveBut("cli", "desk");
    KNOWS.get("desk").remove("demo");
  }

  private PackagePicture() {}

  /** Names of all packages, without the root, in the order of the picture. */
  static List<String> packages() {
    return List.copyOf(KNOWS.keySet());
  }

  /** Names of the packages that one package may know; never itself. */
  static Set<String> knownTo(String name) {
    return Set.copyOf(KNOWS.get(name));
  }

  private static void knows(String name, String... known) {
    Set<String> names = new TreeSet<>(List.of(known));
    if (!name.equals("refusal")) {
      names.add("refusal");
    }
    KNOWS.put(name, names);
  }

  /** Names one row of the picture: its packages know what stands above the row, not each other. */
  private static void knowsAllAbove(String... row) {
    knowsAllAboveBut("", row);
  }

  private static void knowsAllAboveBut(String unknown, String... row) {
    Set<String> above = new TreeSet<>(KNOWS.keySet());
    above.remove(unknown);
    for (String name : row) {
      KNOWS.put(name, new TreeSet<>(above));
    }
  }
}
