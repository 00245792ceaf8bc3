package fettle.cli;

import fettle.refusal.InputRefusedException;
import fettle.table.InputFile;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Raw readings of a dossier. */
@Command(
    name = "readings",
    sortOptions = false,
    synopsisSubcommandLabel = "add|exclude|include",
    header = "Raw readings of a dossier.",
    footer = {"", "Example: fettle readings add bronze-hv10 run-1.csv run-2.csv"},
    subcommands = {
      ReadingsCommand.Add.class,
      ReadingsCommand.Exclude.class,
      ReadingsCommand.Include.class
    })
final class ReadingsCommand extends GroupCommand {
  ReadingsCommand(Session session) {
    super(session);
  }

  /** Adds readings files. */
  @Command(
      name = "add",
      sortOptions = false,
      header = "Add readings files; they are kept byte for byte, all of them or none.")
  static final class Add implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    @Parameters(index = "0", paramLabel = "DOSSIER", description = "Name of the dossier.")
    private String dossier;

    @Parameters(
        index = "1..*",
        arity = "1..*",
        paramLabel = "FILE",
        description = "Readings CSV files.")
    private List<String> files;

    Add(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      Map<String, byte[]> contents = new LinkedHashMap<>();
      for (String file : files) {
        String name = session.resolve(file).getFileName().toString();
        if (contents.put(name, InputFile.bytes(session.resolve(file))) != null) {
          throw new InputRefusedException(
              "Two files are named " + name + ".",
              "the call",
              "files with names of their own",
              "rename one of them");
        }
      }
      var outcome = common.open(session).addReadings(dossier, contents);
      if (common.json()) {
        session
            .out()
            .println(
                JsonOut.object(
                    one ->
                        one.put("dossier", dossier)
                            .putArray("added", list -> Lists.texts(list, outcome.added()))
                            .putArray("unchanged", list -> Lists.texts(list, outcome.unchanged()))
                            .put("readings", outcome.readings())));
      } else {
        session.out().println(Lists.counted(outcome.added(), "file", "added"));
        if (!outcome.unchanged().isEmpty()) {
          session.out().println(Lists.counted(outcome.unchanged(), "file", "there already"));
        }
        session.out().println("The dossier now holds " + outcome.readings() + " readings.");
      }
      return ExitStatus.DONE;
    }
  }

  /** Leaves a reading out. */
  @Command(
      name = "exclude",
      sortOptions = false,
      header =
          "Leave one reading out of the fit, by a person and for a reason; it stays on record.")
  static final class Exclude implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    @Mixin private ReadingPlace place;

    Exclude(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      common.open(session).exclude(place.dossier, place.file, place.line, place.by, place.reason);
      return place.say(session, common, "left out");
    }
  }

  /** Takes a reading in again. */
  @Command(name = "include", sortOptions = false, header = "Take an excluded reading in again.")
  static final class Include implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    @Mixin private ReadingPlace place;

    Include(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      common.open(session).include(place.dossier, place.file, place.line, place.by, place.reason);
      return place.say(session, common, "taken in again");
    }
  }

  /** Which reading, by whom, why. */
  static final class ReadingPlace {
    @Parameters(paramLabel = "DOSSIER", description = "Name of the dossier.")
    private String dossier;

    @Option(names = "--file", required = true, paramLabel = "F", description = "Readings file.")
    private String file;

    @Option(names = "--line", required = true, paramLabel = "N", description = "Line in it.")
    private int line;

    @Option(names = "--by", required = true, paramLabel = "PERSON", description = "Who decides.")
    private String by;

    @Option(names = "--reason", required = true, paramLabel = "TEXT", description = "Why.")
    private String reason;

    int say(Session session, CommonOptions common, String what) {
      if (common.json()) {
        session
            .out()
            .println(
                JsonOut.object(
                    one ->
                        one.put("dossier", dossier)
                            .put("file", file)
                            .put("line", line)
                            .put("state", what)));
      } else {
        session.out().println("Line " + line + " of " + file + " is " + what + " by " + by + ".");
        session.out().println("Fit again to see what it changes: `fettle fit " + dossier + "`.");
      }
      return ExitStatus.DONE;
    }
  }
}
