package fettle.library;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** The steps as the operating system takes them. */
final class DiskOperations implements FileOperations {
  @Override
  public void createDirectories(Path directory) throws IOException {
    Files.createDirectories(directory);
  }

  @Override
  public void writeForced(Path file, byte[] bytes) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.WRITE,
            StandardOpenOption.TRUNCATE_EXISTING)) {
      write(channel, bytes);
    }
  }

  @Override
  public void appendForced(Path file, long length, byte[] bytes) throws IOException {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      channel.truncate(length);
      channel.position(length);
      write(channel, bytes);
    }
  }

  private static void write(FileChannel channel, byte[] bytes) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    while (buffer.hasRemaining()) {
      channel.write(buffer);
    }
    channel.force(true);
  }

  @Override
  public void moveIntoPlace(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
  }

  @Override
  public void forceDirectory(Path directory) throws IOException {
    FileChannel channel;
    try {
      channel = FileChannel.open(directory, StandardOpenOption.READ);
    } catch (IOException notOpened) {
      // Windows opens no directory as a file; its moves are in the journal without that.
      return;
    }
    try (channel) {
      channel.force(true);
    }
  }

  @Override
  public void delete(Path file) throws IOException {
    Files.deleteIfExists(file);
  }
}
