package fettle.cli;

import java.io.IOException;
import java.util.List;

/** Lists of names in output. */
final class Lists {
  private static final int SHOWN = 8;

  private Lists() {}

  static void texts(JsonOut json, List<String> names) throws IOException {
    for (String name : names) {
      json.add(name);
    }
  }

  /** For example "3 blocks added: A, B, C." */
  static String counted(List<String> names, String noun, String verb) {
    String shown = String.join(", ", names.subList(0, Math.min(SHOWN, names.size())));
    String more = names.size() > SHOWN ? " and " + (names.size() - SHOWN) + " more" : "";
    return names.size()
        + " "
        + noun
        + (names.size() == 1 ? " " : "s ")
        + verb
        + (names.isEmpty() ? "." : ": " + shown + more + ".");
  }
}
