package fettle.library;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Writes whole files so that a crash at any instant leaves the old content or the new one: a
 * temporary file beside the place, forced to disk, moved into place, the folder forced.
 */
final class DurableFiles {
  private static final String TEMPORARY = ".fettle-part";

  private final FileSteps steps;

  DurableFiles(FileSteps steps) {
    this.steps = steps;
  }

  void write(Path file, byte[] bytes) {
    Path folder = file.getParent();
    Path temporary = folder.resolve("." + file.getFileName() + TEMPORARY);
    try {
      Files.createDirectories(folder);
      steps.writeForced(temporary, bytes);
      steps.moveIntoPlace(temporary, file);
      steps.forceFolder(folder);
    } catch (IOException failure) {
      try {
        Files.deleteIfExists(temporary);
      } catch (IOException left) {
        failure.addSuppressed(left);
      }
      throw new UncheckedIOException(failure);
    }
  }

  /**
   * Appends one line, which is in the file whole or, after a crash, cut and recognisable as such.
   */
  void appendLine(Path file, byte[] line) {
    try {
      Files.createDirectories(file.getParent());
      boolean first = !Files.exists(file);
      steps.appendForced(file, line);
      if (first) {
        steps.forceFolder(file.getParent());
      }
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  /** Whether a file is a left-over of a write that a crash cut short. */
  static boolean isLeftOver(Path file) {
    return file.getFileName().toString().endsWith(TEMPORARY);
  }
}
