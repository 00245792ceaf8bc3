package fettle.cli;

import fettle.library.LaboratoryFolder;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Recomputes a draft from the inputs that were kept. */
@Command(
    name = "recompute",
    sortOptions = false,
    header = "Compute the draft again from the kept inputs: same bytes, or what differs.",
    footer = {"", "Example: fettle recompute bronze-hv10"})
final class RecomputeCommand implements Callable<Integer> {
  private final Session session;

  @Mixin private CommonOptions common;

  @Parameters(paramLabel = "DOSSIER", description = "Name of the dossier.")
  private String dossier;

  RecomputeCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() {
    LaboratoryFolder laboratory = common.open(session);
    var outcome = laboratory.recompute(dossier);
    if (common.json()) {
      session
          .out()
          .println(
              JsonOut.object(
                  one ->
                      one.put("dossier", dossier)
                          .put("identical", outcome.identical())
                          .putArray(
                              "differences", list -> Lists.texts(list, outcome.differences()))));
    } else {
      session.out().println(dossier + ": " + outcome.message());
    }
    return outcome.identical() ? ExitStatus.DONE : ExitStatus.NEGATIVE;
  }
}
