package fettle.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The program itself. */
@Command(
    name = "fettle",
    versionProvider = RootCommand.Version.class,
    synopsisSubcommandLabel = "COMMAND",
    header =
        "Calibration curves for portable hardness testing: from certified blocks and raw"
            + " readings to a checked curve.",
    footer = {
      "",
      "Every command takes --home DIR (the laboratory folder), --json and --help.",
      "Exit status: 0 done, 1 done with a negative verdict, 2 wrong input or call, 3 internal error.",
      "",
      "Portable results are comparative evidence within the stated range and uncertainty; the",
      "governing code and qualified people decide."
    },
    subcommands = {
      DemoCommand.class,
      BlockCommand.class,
      DossierCommand.class,
      ReadingsCommand.class,
      TemplateCommand.class,
      ScreenCommand.class,
      FitCommand.class,
      ValidateCommand.class,
      RecomputeCommand.class,
      ApplyCommand.class,
      ReportCommand.class,
      SelfCheckCommand.class
    })
final class RootCommand implements Callable<Integer> {
  private final Session session;

  @Spec private CommandSpec spec;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version.")
  private boolean version;

  RootCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() {
    spec.commandLine().usage(session.err());
    return ExitStatus.REFUSED;
  }

  /** Version from the jar. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"fettle " + Session.version()};
    }
  }
}
