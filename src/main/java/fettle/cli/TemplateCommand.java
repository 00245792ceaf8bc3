package fettle.cli;

import fettle.block.BlocksCsv;
import fettle.reading.ReadingsCsv;
import fettle.refusal.InputRefusedException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Prints an empty CSV to fill in. */
@Command(
    name = "template",
    sortOptions = false,
    header = "Print an empty CSV to fill in: blocks, readings or reverification.",
    footer = {"", "Example: fettle template readings > run-1.csv"})
final class TemplateCommand implements Callable<Integer> {
  private final Session session;

  @Mixin private CommonOptions common;

  @Parameters(paramLabel = "KIND", description = "blocks, readings or reverification")
  private String kind;

  TemplateCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() {
    String text =
        switch (kind) {
          case "blocks" -> BlocksCsv.template();
          // Readings of a reverification have the form of any readings.
          case "readings", "reverification" -> ReadingsCsv.template();
          default ->
              throw new InputRefusedException(
                  "\"" + kind + "\" is not a template.",
                  "the call",
                  "blocks, readings or reverification",
                  "name one of them");
        };
    if (common.json()) {
      session.out().println(JsonOut.object(one -> one.put("kind", kind).put("csv", text)));
    } else {
      session.out().print(text);
    }
    return ExitStatus.DONE;
  }
}
