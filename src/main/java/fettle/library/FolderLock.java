package fettle.library;

import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * One writer at a time in one folder, among threads, processes and users of a file share.
 *
 * <p>The operating system's file lock does the work and ends with the process that held it, so that
 * no stale lock outlives a crash; the file's text says who holds it.
 */
final class FolderLock implements AutoCloseable {
  private static final int ATTEMPTS = 200;
  private static final long PAUSE_MILLIS = 25;

  private final FileChannel channel;
  private final FileLock lock;

  private FolderLock(FileChannel channel, FileLock lock) {
    this.channel = channel;
    this.lock = lock;
  }

  /**
   * Takes the lock, waiting up to five seconds.
   *
   * @param folder folder to write in
   * @param holder who takes it
   * @throws InputRefusedException if somebody else keeps it
   */
  static FolderLock take(Path folder, String holder) {
    Path file = folder.resolve(".lock");
    FileChannel channel = null;
    try {
      Files.createDirectories(folder);
      channel =
          FileChannel.open(
              file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.READ);
      for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
        FileLock lock = attempt(channel);
        if (lock != null) {
          channel.truncate(0);
          channel.write(ByteBuffer.wrap(holder.getBytes(StandardCharsets.UTF_8)), 0);
          return new FolderLock(channel, lock);
        }
        Thread.sleep(PAUSE_MILLIS);
      }
      String by = Files.readString(file, StandardCharsets.UTF_8).strip();
      channel.close();
      throw new InputRefusedException(
          "Somebody else is writing here" + (by.isEmpty() ? "." : ": " + by + "."),
          folder.toString(),
          "one writer at a time",
          "wait until the other has finished, then run the command again");
    } catch (IOException failure) {
      close(channel);
      throw new UncheckedIOException(failure);
    } catch (InterruptedException interruption) {
      close(channel);
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while waiting for a lock", interruption);
    }
  }

  private static void close(FileChannel channel) {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException ignoredAfterAFailure) {
      // The failure that led here is the one to report.
    }
  }

  private static FileLock attempt(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException heldInThisProcess) {
      return null;
    }
  }

  @Override
  public void close() {
    try {
      lock.release();
      channel.close();
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }
}
