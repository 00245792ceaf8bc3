package fettle.cli;

import fettle.library.LaboratoryFolder;
import picocli.CommandLine.Option;

/** Options that every command takes. */
final class CommonOptions {
  @Option(names = "--json", description = "Print one JSON document on standard output.")
  boolean json;

  @Option(
      names = "--home",
      paramLabel = "DIR",
      description = "The laboratory folder; any empty folder is one. Default: the current folder.")
  String home = "";

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  LaboratoryFolder open(Session session) {
    return LaboratoryFolder.open(
        session.resolve(home), session.clock(), "fettle " + Session.version(), session.user());
  }
}
