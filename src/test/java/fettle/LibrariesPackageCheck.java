package fettle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;

/** The finished package: every library it names lies beside it, and it starts. */
class LibrariesPackageCheck {
  private static final Path JAR = Path.of("target", "fettle.jar");

  @Test
  void everyLibraryOfTheManifestIsThere() throws IOException {
    try (JarFile jar = new JarFile(JAR.toFile())) {
      String classPath = jar.getManifest().getMainAttributes().getValue(Attributes.Name.CLASS_PATH);
      assertThat(classPath.split(" ")).allMatch(name -> Files.exists(JAR.resolveSibling(name)));
    }
  }

  @Test
  void starts() throws IOException, InterruptedException {
    Path java = Path.of(System.getProperty("java.home"), "bin", "java");
    Process process =
        new ProcessBuilder(List.of(java.toString(), "-jar", JAR.toString(), "--version"))
            .redirectErrorStream(true)
            .start();
    String said = new String(process.getInputStream().readAllBytes());
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as(said).isZero();
  }
}
