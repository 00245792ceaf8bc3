package fettle.cli;

import fettle.refusal.InputRefusedException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Runs one command: the one place where exceptions become text and exit status. */
final class CommandRun {
  private CommandRun() {}

  static int execute(Session session, String... args) {
    CommandLine line = new CommandLine(new RootCommand(session), new SessionFactory(session));
    PrintWriter out = new PrintWriter(session.out(), true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(session.err(), true, StandardCharsets.UTF_8);
    line.setOut(out);
    line.setErr(err);
    line.setUsageHelpWidth(96);
    line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
    line.setParameterExceptionHandler((failure, parsed) -> wrongCall(session, failure));
    line.setExecutionExceptionHandler((failure, command, parsed) -> failed(session, failure));
    int status = line.execute(args);
    out.flush();
    err.flush();
    return status;
  }

  private static int wrongCall(Session session, ParameterException failure) {
    CommandLine command = failure.getCommandLine();
    session.err().println("fettle: " + failure.getMessage());
    session
        .err()
        .println(
            "  do        see `"
                + command.getCommandSpec().qualifiedName()
                + " --help` for what it takes");
    return ExitStatus.REFUSED;
  }

  private static int failed(Session session, Exception failure) {
    session.out().flush();
    if (failure instanceof InputRefusedException refusal) {
      session.err().println("fettle: " + refusal.getMessage());
      return ExitStatus.REFUSED;
    }
    if (failure instanceof UncheckedIOException || failure instanceof java.io.IOException) {
      Throwable cause = failure instanceof UncheckedIOException ? failure.getCause() : failure;
      session
          .err()
          .println(
              "fettle: A file could not be read or written: "
                  + (cause.getMessage() == null ? cause : cause.getMessage())
                  + "\n  do        look at the disk, the folder's permissions and whether another"
                  + " program holds the file; then run the command again");
      return ExitStatus.REFUSED;
    }
    session.err().println("fettle: internal error: " + failure);
    for (StackTraceElement element : failure.getStackTrace()) {
      session.err().println("    at " + element);
      if (element.getClassName().startsWith("picocli")) {
        break;
      }
    }
    session.err().println("  Nothing after this point was done. Please report these lines.");
    return ExitStatus.INTERNAL;
  }
}
