package fettle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the picture of packages in DEVELOPERS.md, and shows that each of its rules can fail. */
class ArchitectureTest {
  private static final JavaClasses OURS =
      new ClassFileImporter().importPath(Path.of("target", "classes"));

  private static JavaClasses misdeeds;

  @BeforeAll
  static void compileMisdeeds(@TempDir Path directory) throws IOException {
    misdeeds = new ClassFileImporter().importPath(Misdeeds.compiledInto(directory));
  }

  static Stream<ArchRule> rules() {
    return ArchitectureRules.all().stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rules")
  void holds(ArchRule rule) {
    rule.check(OURS);
  }

  @ParameterizedTest(name = "not: {0}")
  @MethodSource("rules")
  void canFail(ArchRule rule) {
    assertTrue(
        rule.evaluate(misdeeds).hasViolation(), "no misdeed breaks: " + rule.getDescription());
  }

  @Test
  void findsEveryMisdeedAndNothingElse() {
    // A rule that forbids everything can fail, too: what is allowed must pass.
    // Cycles are left aside, for the wrong half of one is a class that is allowed by itself.
    List<String> broken =
        rules()
            .filter(rule -> !rule.getDescription().startsWith("packages form no cycle"))
            .flatMap(rule -> rule.evaluate(misdeeds).getFailureReport().getDetails().stream())
            .toList();
    for (String name : Misdeeds.wrong()) {
      assertTrue(broken.stream().anyMatch(line -> line.contains(name)), name + " was not found");
    }
    assertEquals(List.of(), broken.stream().filter(line -> line.contains("Allowed")).toList());
  }

  @Test
  void everyPackageSaysWhatItIsFor() throws IOException {
    Path root = Path.of("src/main/java/fettle");
    try (Stream<Path> files = Files.walk(root)) {
      List<Path> mute =
          files
              .filter(file -> file.toString().endsWith(".java"))
              .map(Path::getParent)
              .distinct()
              .filter(directory -> !Files.exists(directory.resolve("package-info.java")))
              .toList();
      assertEquals(List.of(), mute, "packages without package-info.java");
    }
    assertFalse(OURS.isEmpty());
  }
}
