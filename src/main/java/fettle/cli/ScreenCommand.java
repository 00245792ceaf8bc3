package fettle.cli;

import fettle.calibration.Screening;
import fettle.calibration.ScreeningFlag;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Looks for readings that stand out. */
@Command(
    name = "screen",
    sortOptions = false,
    header = "Look for readings and blocks that stand out: flags, never deletions.",
    footer = {"", "Example: fettle screen bronze-hv10"})
final class ScreenCommand implements Callable<Integer> {
  private final Session session;

  @Mixin private CommonOptions common;

  @Parameters(paramLabel = "DOSSIER", description = "Name of the dossier.")
  private String dossier;

  ScreenCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() {
    List<ScreeningFlag> flags = Screening.flags(common.open(session).campaign(dossier));
    if (common.json()) {
      session
          .out()
          .println(
              JsonOut.object(
                  one ->
                      one.putArray(
                          "flags",
                          list -> {
                            for (ScreeningFlag flag : flags) {
                              list.addObject(
                                  each -> {
                                    each.put("kind", flag.kind().id())
                                        .put("block", flag.block())
                                        .put("file", flag.file());
                                    if (flag.line().isPresent()) {
                                      each.put("line", flag.line().getAsInt());
                                    } else {
                                      each.putNull("line");
                                    }
                                    each.put("statistic", flag.statistic())
                                        .put("critical", flag.critical())
                                        .put("level", flag.level())
                                        .put("message", flag.message());
                                  });
                            }
                          })));
    } else if (flags.isEmpty()) {
      session.out().println(dossier + ": nothing stands out.");
    } else {
      session
          .out()
          .println(dossier + ": " + flags.size() + (flags.size() == 1 ? " flag" : " flags"));
      for (ScreeningFlag flag : flags) {
        session.out().println("  - " + flag.message());
      }
      session
          .out()
          .println("A flag leaves nothing out. To leave a reading out, with a reason that");
      session
          .out()
          .println(
              "does not rest on the curve: `fettle readings exclude "
                  + dossier
                  + " --file F --line N --by PERSON --reason TEXT`.");
    }
    return ExitStatus.DONE;
  }
}
