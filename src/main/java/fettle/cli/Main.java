package fettle.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;

/** Entry point of the command line. */
public final class Main {
  private Main() {}

  /**
   * Runs one command and ends the program with its exit status.
   *
   * @param args the command and its options
   */
  public static void main(String[] args) {
    PrintStream out = stream(FileDescriptor.out);
    PrintStream err = stream(FileDescriptor.err);
    Session session =
        new Session(
            out,
            err,
            System.in,
            Path.of(""),
            Clock.systemDefaultZone(),
            System.getProperty("user.name", ""),
            Runtime.getRuntime().availableProcessors());
    int status = CommandRun.execute(session, args);
    out.flush();
    err.flush();
    System.exit(out.checkError() && status == 0 ? ExitStatus.INTERNAL : status);
  }

  private static PrintStream stream(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), false, StandardCharsets.UTF_8);
  }
}
