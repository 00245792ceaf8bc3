package fettle.cli;

import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Files that the caller named: complete or not there, never half-written. */
final class OutputFile {
  private OutputFile() {}

  /** Something that writes a file. */
  interface Writer {
    void write(Path file) throws IOException;
  }

  static void write(Path file, byte[] bytes) throws IOException {
    write(file, partial -> Files.write(partial, bytes));
  }

  /** Writes beside the place and moves into it when all is written. */
  static void write(Path file, Writer writer) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new InputRefusedException(
          "The folder for the output does not exist.",
          file.toString(),
          "a file in an existing folder",
          "make the folder, or name another file");
    }
    if (Files.isDirectory(file)) {
      throw new InputRefusedException(
          "The output is a folder.", file.toString(), "a file", "name a file in it");
    }
    Path partial = folder.resolve("." + file.getFileName() + ".fettle-part");
    try {
      writer.write(partial);
      Files.move(partial, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(partial);
    }
  }
}
