package fettle.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The page of checks in docs is the one that the checks themselves give. */
class ChecksDocumentTest {
  @Test
  void thePageIsTheChecksOwn() {
    assertThat(Path.of("docs/checks.md")).hasContent(ChecksPage.markdown());
  }
}
