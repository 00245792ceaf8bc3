package fettle.cli;

import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Clock;

/**
 * What surrounds one run of a command.
 *
 * @param out standard output: results
 * @param err standard error: messages and progress
 * @param in standard input
 * @param workingDirectory folder in which the command was called
 * @param clock clock
 * @param user name of the account, for locks
 * @param processors number of processors
 */
record Session(
    PrintStream out,
    PrintStream err,
    InputStream in,
    Path workingDirectory,
    Clock clock,
    String user,
    int processors) {

  /** A path as the caller means it. */
  Path resolve(String path) {
    return workingDirectory.resolve(path);
  }

  /** Version of the program, from the jar's manifest. */
  static String version() {
    String version = Session.class.getPackage().getImplementationVersion();
    return version == null ? "development" : version;
  }
}
