package fettle.library;

import java.io.IOException;
import java.nio.file.Path;

/** The steps by which the folder changes, so that a test can let each of them fail. */
interface FileOperations {
  void createDirectories(Path directory) throws IOException;

  /** Writes a whole file and forces it to disk. */
  void writeForced(Path file, byte[] bytes) throws IOException;

  /** Cuts a file to a length, writes bytes after it and forces it; makes the file if need be. */
  void appendForced(Path file, long length, byte[] bytes) throws IOException;

  /** Moves a file into place, replacing what is there, so that it is there whole or not at all. */
  void moveIntoPlace(Path from, Path to) throws IOException;

  /** Forces the entries of a directory to disk, where the platform knows how. */
  void forceDirectory(Path directory) throws IOException;

  void delete(Path file) throws IOException;
}
