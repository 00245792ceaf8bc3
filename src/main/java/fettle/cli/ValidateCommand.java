package fettle.cli;

import fettle.acceptance.Checks;
import fettle.acceptance.Evidence;
import fettle.acceptance.Verdict;
import fettle.library.LaboratoryFolder;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Asks every acceptance check. */
@Command(
    name = "validate",
    sortOptions = false,
    header = "Ask every acceptance check of the draft, with findings.",
    footer = {
      "",
      "Exit status 1 when the verdict is fail.",
      "Example: fettle validate bronze-hv10"
    })
final class ValidateCommand implements Callable<Integer> {
  private final Session session;

  @Mixin private CommonOptions common;

  @Parameters(paramLabel = "DOSSIER", description = "Name of the dossier.")
  private String dossier;

  ValidateCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() {
    LaboratoryFolder laboratory = common.open(session);
    Evidence evidence =
        new Evidence(laboratory.draftAnalysis(dossier), LocalDate.now(session.clock()));
    FindingsOutput output = new FindingsOutput(dossier, Checks.ask(evidence));
    if (common.json()) {
      session.out().println(output.json());
    } else {
      output.print(session.out());
    }
    return output.verdict() == Verdict.FAIL ? ExitStatus.NEGATIVE : ExitStatus.DONE;
  }
}
