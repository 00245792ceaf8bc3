package fettle.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Holds docs/reference-cases.md to the case files, and the case files to tests that use them. */
class ReferenceCasesPageTest {
  @Test
  void committedPageIsTheOneThatIsMade() throws IOException {
    String made = ReferenceCasesPage.text();
    Path here = Path.of("target", "reference-cases.md");
    Files.writeString(here, made);
    String committed =
        Files.readString(Path.of("docs", "reference-cases.md")).replace("\r\n", "\n");
    assertEquals(made, committed, "copy " + here + " to docs/reference-cases.md");
  }

  @Test
  void everyCaseOfFitsAndPropagationsIsUsed() throws IOException {
    assertEquals(
        List.of(),
        ReferenceCasesPage.unused().stream()
            .filter(name -> !name.startsWith("statistics"))
            .toList());
  }
}
