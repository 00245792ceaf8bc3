package fettle.library;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** The single steps of which durable writing is made, so that a test can make each one fail. */
interface FileSteps {
  /** Writes a new file and forces it to disk. */
  void writeForced(Path file, byte[] bytes) throws IOException;

  /** Appends to a file and forces it to disk. */
  void appendForced(Path file, byte[] bytes) throws IOException;

  /** Moves a file into place at once. */
  void moveIntoPlace(Path from, Path to) throws IOException;

  /** Forces a folder's entries to disk, where the platform allows. */
  void forceFolder(Path folder);

  /** The real disk. */
  FileSteps DISK =
      new FileSteps() {
        @Override
        public void writeForced(Path file, byte[] bytes) throws IOException {
          write(file, bytes, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING);
        }

        @Override
        public void appendForced(Path file, byte[] bytes) throws IOException {
          write(file, bytes, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        }

        private void write(Path file, byte[] bytes, StandardOpenOption... options)
            throws IOException {
          StandardOpenOption[] all = java.util.Arrays.copyOf(options, options.length + 1);
          all[options.length] = StandardOpenOption.WRITE;
          try (FileChannel channel = FileChannel.open(file, all)) {
            ByteBuffer buffer = ByteBuffer.wrap(bytes);
            while (buffer.hasRemaining()) {
              channel.write(buffer);
            }
            channel.force(true);
          }
        }

        @Override
        public void moveIntoPlace(Path from, Path to) throws IOException {
          Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        }

        @Override
        public void forceFolder(Path folder) {
          try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
          } catch (IOException notOnThisPlatform) {
            // Windows does not open folders; the move itself is journalled there.
          }
        }
      };
}
