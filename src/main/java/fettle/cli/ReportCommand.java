package fettle.cli;

import fettle.acceptance.Checks;
import fettle.acceptance.Evidence;
import fettle.calibration.Analysis;
import fettle.library.LaboratoryFolder;
import fettle.report.CalibrationReport;
import fettle.report.ReportContent;
import fettle.report.ReportInput;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the report of a draft. */
@Command(
    name = "report",
    sortOptions = false,
    header = "Write the report of a draft as one self-contained HTML file.",
    footer = {"", "Example: fettle report bronze-hv10 --html bronze.html"})
final class ReportCommand implements Callable<Integer> {
  private final Session session;

  @Mixin private CommonOptions common;

  @Parameters(paramLabel = "DOSSIER", description = "Name of the dossier.")
  private String dossier;

  @Option(
      names = "--html",
      paramLabel = "FILE",
      description = "File to write. Default: report.html beside the draft.")
  private String html;

  ReportCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() throws IOException {
    LaboratoryFolder laboratory = common.open(session);
    var draft = laboratory.draft(dossier);
    Analysis analysis = laboratory.draftAnalysis(dossier);
    LocalDate today = LocalDate.now(session.clock());
    List<ReportInput> inputs =
        draft.inputs().stream()
            .map(input -> new ReportInput(input.name(), input.sha256()))
            .toList();
    ReportContent content =
        new ReportContent(
            analysis,
            Checks.ask(new Evidence(analysis, today)),
            Checks.all(),
            "draft",
            Optional.empty(),
            draft.fingerprint(),
            draft.fingerprint().substring(0, 12),
            today,
            "fettle " + Session.version(),
            Optional.empty(),
            inputs,
            List.of());
    StringWriter text = new StringWriter();
    CalibrationReport.write(content, text);
    Path file = html == null ? laboratory.draftReport(dossier) : session.resolve(html);
    OutputFile.write(file, text.toString().getBytes(StandardCharsets.UTF_8));
    if (common.json()) {
      session
          .out()
          .println(JsonOut.object(one -> one.put("dossier", dossier).put("html", file.toString())));
    } else {
      session.out().println("Report: " + file);
    }
    return ExitStatus.DONE;
  }
}
