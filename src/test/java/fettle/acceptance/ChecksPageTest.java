package fettle.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/**
 * The page in docs is the one the checks write. When it differs, copy target/checks.md, which this
 * test leaves, over docs/checks.md.
 */
class ChecksPageTest {
  @Test
  void isTheCommittedPage() throws IOException {
    String written = ChecksPage.markdown();
    Files.writeString(Path.of("target", "checks.md"), written);
    assertThat(Files.readString(Path.of("docs", "checks.md"))).isEqualTo(written);
  }
}
