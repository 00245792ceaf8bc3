package fettle.cli;

import fettle.library.LaboratoryFolder;
import picocli.CommandLine.Option;

/** Options that every command takes. */
final class CommonOptions {
  @Option(names = "--json", description = "Print one JSON document on standard output.")
  private boolean json;

  @Option(
      names = "--home",
      paramLabel = "DIR",
      description = "The laboratory folder; any empty folder is one. Default: the current folder.")
  private String home = "";

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  LaboratoryFolder open(Session session) {
    return LaboratoryFolder.open(
        session.resolve(home), session.clock(), "fettle " + Session.version(), session.user());
  }

  boolean json() {
    return json;
  }
}
