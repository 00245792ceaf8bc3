package fettle.library;

import fettle.refusal.InputRefusedException;
import fettle.table.Shown;
import java.util.Locale;
import java.util.Set;

/** Names that become names of files or folders, safe on every operating system. */
final class FolderNames {
  private static final Set<String> RESERVED = Set.of("con", "prn", "aux", "nul");
  private static final int LONGEST_FILE = 100;

  private FolderNames() {}

  /** A dossier's name, or a refusal. */
  static String dossier(String name) {
    if (!name.matches("[a-z0-9][a-z0-9-]{0,62}")) {
      throw new InputRefusedException(
          "The dossier's name " + Shown.quoted(name) + " cannot be used.",
          "dossier name",
          "1 to 63 of the letters a to z, digits and '-', a letter or digit first",
          "choose a name such as uci-hv10-42crmo4; the title may be any text");
    }
    if (isReserved(name)) {
      throw new InputRefusedException(
          "The dossier's name " + Shown.quoted(name) + " is one that an operating system reserves.",
          "dossier name",
          "any other name",
          "add to it, such as " + name + "-1");
    }
    return name;
  }

  /**
   * The name under which a readings file is kept: every character but letters a to z, digits, '.',
   * '_' and '-' becomes '_', and it ends with {@code .csv}.
   */
  static String readings(String name) {
    String plain = name.replaceAll("[^A-Za-z0-9._-]", "_").replaceAll("^[^A-Za-z0-9]+", "");
    String kept = plain.toLowerCase(Locale.ROOT).endsWith(".csv") ? plain : plain + ".csv";
    String stem = kept.substring(0, kept.length() - ".csv".length());
    if (stem.isEmpty() || kept.length() > LONGEST_FILE || isReserved(stem)) {
      throw new InputRefusedException(
          "The readings cannot be kept under the file name " + Shown.quoted(name) + ".",
          Shown.plain(name),
          "a name of 1 to 96 letters a to z, digits, '.', '_' and '-', none that an operating"
              + " system reserves",
          "rename the file, such as day-1.csv");
    }
    return kept;
  }

  private static boolean isReserved(String name) {
    String stem = name.toLowerCase(Locale.ROOT).split("\\.", 2)[0];
    return RESERVED.contains(stem) || stem.matches("(com|lpt)[0-9]");
  }
}
