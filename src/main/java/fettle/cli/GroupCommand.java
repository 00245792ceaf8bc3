package fettle.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A command that only holds others. */
abstract class GroupCommand implements Callable<Integer> {
  private final Session session;

  @Spec private CommandSpec spec;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  GroupCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() {
    spec.commandLine().usage(session.err());
    return ExitStatus.REFUSED;
  }
}
