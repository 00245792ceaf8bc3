package fettle.report;

import fettle.acceptance.Check;
import fettle.acceptance.Evidence;
import fettle.acceptance.Finding;
import fettle.acceptance.Outcome;
import fettle.acceptance.Severity;
import fettle.calibration.Analysis;
import fettle.calibration.Calibration;
import fettle.calibration.Campaign;
import fettle.calibration.ModelChoice;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Reports of simulated campaigns, for tests and, by {@link #main}, for looking at. */
final class ReportSamples {
  private ReportSamples() {}

  static String written(ReportContent content) {
    StringBuilder out = new StringBuilder();
    try {
      CalibrationReport.write(content, out);
    } catch (IOException impossible) {
      throw new AssertionError(impossible);
    }
    return out.toString();
  }

  static ReportContent content(Campaign campaign, Optional<ModelChoice> choice) {
    return content(Calibration.analyse(campaign, choice), findings(""), "draft");
  }

  static ReportContent content(Analysis analysis, List<Finding> findings, String state) {
    return new ReportContent(
        analysis,
        findings,
        List.of(new Sample("between-block-scatter")),
        state,
        state.equals("draft") ? Optional.empty() : Optional.of(2),
        "3f".repeat(32),
        "3f3f3f3f3f3f",
        LocalDate.of(2026, 3, 2),
        "fettle 0.1.0",
        Optional.of("Invented laboratory"),
        List.of(
            new ReportInput("readings/readings-2026.csv", "ab".repeat(32)),
            new ReportInput("reference-blocks/F1.json", "cd".repeat(32))),
        state.equals("draft")
            ? List.of()
            : List.of(
                new SignedStep(
                    "submitted", "A. Person", LocalDate.of(2026, 2, 20), Optional.empty()),
                new SignedStep(
                    "approved", "C. Person", LocalDate.of(2026, 2, 24), Optional.of("in order"))));
  }

  static List<Finding> findings(String text) {
    return List.of(
        finding(
            "fitting-blocks",
            Severity.STOPS_RELEASE,
            Outcome.PASSED,
            "10 fitting blocks, at least 5." + text),
        finding(
            "between-block-scatter",
            Severity.NEEDS_REASON,
            Outcome.FAILED,
            "Between-block scatter 3.4 % exceeds 3 %." + text),
        finding(
            "elastic-modulus",
            Severity.NOTE,
            Outcome.DATA_MISSING,
            "No elastic modulus is recorded for 2 blocks." + text),
        finding(
            "check-blocks-agree",
            Severity.STOPS_RELEASE,
            Outcome.FAILED,
            "Block C2 deviates by 6.2 HV10, E_n = 1.31, limit 1." + text));
  }

  private static Finding finding(String id, Severity severity, Outcome outcome, String message) {
    return new Finding(
        id,
        severity,
        outcome,
        OptionalDouble.of(1.31),
        OptionalDouble.of(1),
        outcome == Outcome.FAILED ? Optional.of("C2") : Optional.empty(),
        Optional.of("readings-2026.csv"),
        OptionalInt.of(14),
        message);
  }

  /** A check that is only spoken of. */
  private record Sample(String id) implements Check {
    @Override
    public String question() {
      return "Is the scatter between blocks small enough to stand unexplained?";
    }

    @Override
    public String why() {
      return "A large one says that the blocks are not of one family.";
    }

    @Override
    public String remedy() {
      return "Look at the certificates of the blocks with the largest deviations.";
    }

    @Override
    public String citation() {
      return "common practice, no source";
    }

    @Override
    public Severity severity() {
      return Severity.NEEDS_REASON;
    }

    @Override
    public List<Finding> ask(Evidence evidence) {
      return List.of();
    }
  }

  /**
   * Writes samples into a folder.
   *
   * @param arguments the folder
   * @throws IOException if it cannot be written to
   */
  public static void main(String[] arguments) throws IOException {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    var policy = SimulatedCampaign.vickersPolicy();
    var none = Optional.<ModelChoice>empty();
    write(folder, "full", content(SimulatedCampaign.vickers(10, 3, policy), none));
    write(
        folder, "bare", content(SimulatedCampaign.vickers(6, 0, fettle.policy.Policy.EMPTY), none));
    write(folder, "three", content(SimulatedCampaign.vickers(3, 1, policy), none));
    write(folder, "sixty", content(SimulatedCampaign.vickers(60, 5, policy), none));
    write(
        folder,
        "rockwell",
        content(
            Calibration.analyse(
                SimulatedCampaign.rockwell(8, 3, SimulatedCampaign.rockwellPolicy()), none),
            List.of(),
            "released"));
  }

  private static void write(Path folder, String name, ReportContent content) throws IOException {
    Files.writeString(folder.resolve(name + ".html"), written(content));
  }
}
