package fettle.table;

import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Reads the bytes of a file that a person named, within the limit for whole tables. */
public final class InputFile {
  /** Greatest size of a file that is read as a whole: 64 MiB. */
  public static final int LARGEST = 64 << 20;

  private InputFile() {}

  /**
   * All bytes of a file.
   *
   * @param path the file
   * @return its bytes, at most {@link #LARGEST}
   * @throws InputRefusedException if there is no such file, it is a folder, it cannot be read or it
   *     is too large
   */
  public static byte[] bytes(Path path) {
    if (Files.isDirectory(path)) {
      throw new InputRefusedException(
          "This is a folder.", path.toString(), "a file", "name a file in it");
    }
    try (InputStream in = Files.newInputStream(path)) {
      byte[] bytes = in.readNBytes(LARGEST + 1);
      requireSize(bytes.length, path.toString());
      return bytes;
    } catch (NoSuchFileException missing) {
      throw new InputRefusedException(
          "There is no such file.", path.toString(), "a file that exists", "check the name");
    } catch (AccessDeniedException denied) {
      throw new InputRefusedException(
          "The file may not be read.",
          path.toString(),
          "a file that you may read",
          "ask for permission");
    } catch (IOException failure) {
      throw unreadable(path.toString(), failure);
    }
  }

  static void requireSize(int length, String file) {
    if (length > LARGEST) {
      throw new InputRefusedException(
          "The file is larger than 64 MiB.",
          file,
          "at most 64 MiB, or 1,000,000 rows",
          "split the file");
    }
  }

  static InputRefusedException unreadable(String file, IOException failure) {
    InputRefusedException refusal =
        new InputRefusedException(
            "The file cannot be read: " + Shown.plain(String.valueOf(failure.getMessage())) + ".",
            file,
            "a file that can be read to its end",
            "check the medium or the network share");
    refusal.initCause(failure);
    return refusal;
  }
}
