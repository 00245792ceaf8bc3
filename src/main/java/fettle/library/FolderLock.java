package fettle.library;

import fettle.refusal.InputRefusedException;
import fettle.table.Shown;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/**
 * The right to change a laboratory folder: one holder at a time, among processes and threads.
 *
 * <p>The lock is the operating system's, on one byte of the file {@code .fettle.lock}; the file's
 * text only names the holder. A holder that dies loses its lock with its process, so that no lock
 * is ever stale and a file left behind locks nothing. The byte lies far behind the text, for
 * Windows keeps others from reading what is locked.
 */
final class FolderLock {
  private static final String FILE = ".fettle.lock";
  private static final long PLACE = Long.MAX_VALUE - 1;
  private static final long PAUSE_MS = 20;
  private static final int LONGEST_TEXT = 500;

  /**
   * One lock a folder among the threads of this program. A process that closes any handle of a file
   * may lose its locks on it (fcntl(2), POSIX), so only its holder opens the file.
   */
  private static final ConcurrentHashMap<Path, ReentrantLock> WITHIN = new ConcurrentHashMap<>();

  private final Path home;
  private final Clock clock;
  private final String holder;
  private final long patienceMs;

  FolderLock(Path home, Clock clock, String holder, long patienceMs) {
    this.home = home;
    this.clock = clock;
    this.holder = holder;
    this.patienceMs = patienceMs;
  }

  /** Does something while nobody else changes the folder; may be called inside itself. */
  <T> T holding(Supplier<T> work) {
    ReentrantLock within = WITHIN.computeIfAbsent(home, path -> new ReentrantLock());
    acquire(within);
    try {
      return within.getHoldCount() > 1 ? work.get() : holdingFile(work);
    } finally {
      within.unlock();
    }
  }

  private void acquire(ReentrantLock within) {
    try {
      if (!within.tryLock(patienceMs, TimeUnit.MILLISECONDS)) {
        throw busy("another task of this program");
      }
    } catch (InterruptedException interrupted) {
      throw interrupted();
    }
  }

  private <T> T holdingFile(Supplier<T> work) {
    Path file = home.resolve(FILE);
    try (FileChannel channel =
            FileChannel.open(
                file,
                StandardOpenOption.CREATE,
                StandardOpenOption.READ,
                StandardOpenOption.WRITE);
        FileLock lock = lock(channel)) {
      if (!lock.isValid()) {
        throw new IllegalStateException("lock on " + file);
      }
      String text = holder + ", since " + Instant.now(clock) + "\n";
      channel.truncate(0);
      channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8)), 0);
      T result = work.get();
      channel.truncate(0);
      return result;
    } catch (IOException failure) {
      InputRefusedException refusal =
          new InputRefusedException(
              "The laboratory folder cannot be locked for writing: "
                  + Shown.plain(String.valueOf(failure.getMessage()))
                  + ".",
              file.toString(),
              "a folder in which files may be written and locked",
              "check permissions, free space and the network share");
      refusal.initCause(failure);
      throw refusal;
    }
  }

  private FileLock lock(FileChannel channel) throws IOException {
    for (long waited = 0; ; waited += PAUSE_MS) {
      FileLock lock = channel.tryLock(PLACE, 1, false);
      if (lock != null) {
        return lock;
      }
      if (waited >= patienceMs) {
        throw busy(holderOf(channel));
      }
      try {
        Thread.sleep(PAUSE_MS);
      } catch (InterruptedException interrupted) {
        throw interrupted();
      }
    }
  }

  private static String holderOf(FileChannel channel) throws IOException {
    ByteBuffer buffer = ByteBuffer.allocate(LONGEST_TEXT);
    channel.read(buffer, 0);
    String text = new String(buffer.array(), 0, buffer.position(), StandardCharsets.UTF_8).strip();
    return text.isEmpty() ? "another program" : Shown.plain(text);
  }

  private InputRefusedException busy(String by) {
    return new InputRefusedException(
        "The laboratory folder is being changed by " + by + ".",
        home.toString(),
        "a folder that nobody else is changing",
        "wait until that is done, and try again");
  }

  private static UncheckedIOException interrupted() {
    Thread.currentThread().interrupt();
    return new UncheckedIOException(new IOException("interrupted while waiting for the folder"));
  }
}
