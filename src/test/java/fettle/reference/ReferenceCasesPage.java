package fettle.reference;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The page that lists every published case kept in this repository: its source, what it checks, the
 * test classes that use it. Made from the case files and the sources of the tests.
 */
final class ReferenceCasesPage {
  private static final Path RESOURCES = Path.of("src", "test", "resources", "fettle");
  private static final Path TESTS = Path.of("src", "test", "java");
  private static final Path CHECKED = Path.of("src", "main", "resources", "fettle", "selfcheck");
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final Map<String, String> sources;

  private ReferenceCasesPage(Map<String, String> sources) {
    this.sources = sources;
  }

  /** One case file with the test classes that name it. */
  private record Entry(String group, String name, JsonNode root, List<String> classes) {}

  /** The whole page. */
  static String text() throws IOException {
    ReferenceCasesPage page = new ReferenceCasesPage(readSources());
    StringBuilder text =
        new StringBuilder(
            """
            # Reference cases

            Made from the case files by `ReferenceCasesPageTest`, which holds this page to them; do not edit it.

            Tests compare with numbers from outside the project: published standards, handbooks and data sets, kept as
            JSON files with citation, data and expected values, the printed ones and independent recomputations to
            more digits. "In the program": `fettle self-check` recomputes the case on the user's machine.

            """);
    String group = "";
    for (Entry entry : page.entries()) {
      if (!entry.group().equals(group)) {
        group = entry.group();
        text.append(text.charAt(text.length() - 2) == '\n' ? "" : "\n")
            .append("## ")
            .append(group)
            .append("\n\n| case | checks | source | test |\n|---|---|---|---|\n");
      }
      text.append(row(entry));
    }
    text.append("\n## In the program\n\n| case | values | source |\n|---|---|---|\n");
    for (String name : Files.readAllLines(CHECKED.resolve("cases.txt"))) {
      JsonNode root = MAPPER.readTree(CHECKED.resolve(name + ".json").toFile());
      text.append("| ")
          .append(cell(root.get("title").textValue()))
          .append(" | ")
          .append(root.get("expected").size())
          .append(" | ")
          .append(cell(root.get("source").textValue()))
          .append(" |\n");
    }
    return text.toString();
  }

  /** Case files that no test names. */
  static List<String> unused() throws IOException {
    return new ReferenceCasesPage(readSources())
        .entries().stream()
            .filter(entry -> entry.classes().isEmpty())
            .map(entry -> entry.group() + ", " + entry.name())
            .toList();
  }

  private static String row(Entry entry) {
    JsonNode root = entry.root();
    String checks = root.path("checks").asText(root.path("model").asText());
    return "| `"
        + entry.name()
        + "`: "
        + cell(root.path("name").asText())
        + " | "
        + cell(checks)
        + " | "
        + cell(root.at("/source/citation").asText())
        + " | "
        + String.join(", ", entry.classes())
        + " |\n";
  }

  private static String cell(String text) {
    return text.replace("|", "\\|").replace("*", "\\*").replace("\n", " ").strip();
  }

  private List<Entry> entries() throws IOException {
    Map<String, Entry> entries = new TreeMap<>();
    try (Stream<Path> files = Files.walk(RESOURCES)) {
      for (Path file : files.filter(ReferenceCasesPage::isCase).toList()) {
        List<String> folders = new ArrayList<>();
        RESOURCES.relativize(file.getParent()).forEach(part -> folders.add(part.toString()));
        String name = file.getFileName().toString().replace(".json", "");
        String group =
            String.join(", ", folders.stream().filter(f -> !f.equals("reference")).toList());
        entries.put(
            group + "/" + name,
            new Entry(group, name, MAPPER.readTree(file.toFile()), classesNaming(folders, name)));
      }
    }
    return List.copyOf(entries.values());
  }

  private static boolean isCase(Path file) {
    return file.toString().endsWith(".json")
        && RESOURCES.relativize(file).toString().contains("reference");
  }

  /** Classes in whose source both the case and the folder it lies in are named. */
  private List<String> classesNaming(List<String> folders, String name) {
    String folder = folders.get(folders.size() - 1);
    Pattern named = Pattern.compile("[\"/,]\\s*" + Pattern.quote(name) + "(\\.json)?\\s*[\",]");
    return sources.entrySet().stream()
        .filter(source -> source.getValue().contains(folder))
        .filter(source -> named.matcher(source.getValue()).find())
        .map(Map.Entry::getKey)
        .sorted()
        .toList();
  }

  private static Map<String, String> readSources() throws IOException {
    Map<String, String> sources = new TreeMap<>();
    try (Stream<Path> files = Files.walk(TESTS)) {
      for (Path file : files.filter(f -> f.toString().endsWith("Test.java")).toList()) {
        sources.put(
            file.getFileName().toString().replace(".java", ""),
            Files.readString(file, StandardCharsets.UTF_8));
      }
    }
    return sources;
  }
}
