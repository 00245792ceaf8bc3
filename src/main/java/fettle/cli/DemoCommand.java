package fettle.cli;

import fettle.acceptance.Checks;
import fettle.acceptance.Evidence;
import fettle.acceptance.Finding;
import fettle.acceptance.Outcome;
import fettle.acceptance.Severity;
import fettle.acceptance.Verdict;
import fettle.calibration.Analysis;
import fettle.calibration.Screening;
import fettle.calibration.ScreeningFlag;
import fettle.demo.DemoDossier;
import fettle.demo.DemoLaboratory;
import fettle.library.LaboratoryFolder;
import fettle.reading.Reading;
import fettle.refusal.InputRefusedException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Runs the whole job on the invented laboratory, by the same commands that a person types. */
@Command(
    name = "demo",
    sortOptions = false,
    header = "Run the whole job on an invented laboratory with simulated readings.",
    footer = {"", "Example: fettle demo --into my-demo"})
final class DemoCommand implements Callable<Integer> {
  private static final String TECHNICIAN = "Technician Sienna (invented)";
  private static final String MARK = "incoming/README.txt";

  private final Session session;

  @Mixin private CommonOptions common;

  @Option(
      names = "--into",
      paramLabel = "DIR",
      description = "Folder for the demo laboratory. Default: target/demo.")
  private String into = "target/demo";

  DemoCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() throws IOException {
    Path home = session.resolve(into).toAbsolutePath().normalize();
    clear(home);
    Files.createDirectories(home);
    DemoLaboratory demo = DemoLaboratory.withSeed(DemoLaboratory.SHIPPED_SEED);
    demo.writeTo(home);
    say("The demo laboratory, its blocks and its readings are invented and simulated.");
    say("Its incoming files are in " + home.resolve("incoming") + ".");
    say("");
    run(home, 1, "block", "add", "--from", "incoming/blocks.csv");
    List<DemoOutcome> outcomes = new ArrayList<>();
    for (DemoDossier dossier : demo.dossiers()) {
      session.err().println("fettle demo: " + dossier.name() + " …");
      outcomes.add(job(home, demo, dossier));
    }
    if (common.json()) {
      session.out().println(DemoOutcome.json(outcomes));
    } else {
      DemoOutcome.print(session.out(), outcomes);
    }
    return ExitStatus.DONE;
  }

  private void say(String text) {
    if (!common.json()) {
      session.out().println(text);
    }
  }

  /** Only what an earlier demo made is cleared away. */
  private void clear(Path home) throws IOException {
    if (!Files.exists(home)) {
      return;
    }
    boolean empty;
    try (Stream<Path> entries = Files.list(home)) {
      empty = entries.findAny().isEmpty();
    }
    if (empty) {
      return;
    }
    if (!Files.exists(home.resolve(MARK))) {
      throw new InputRefusedException(
          "The folder for the demo holds other files.",
          home.toString(),
          "a new or empty folder, or one that an earlier demo made",
          "name another folder with --into; nothing was changed");
    }
    try (Stream<Path> all = Files.walk(home)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        if (!path.equals(home)) {
          Files.delete(path);
        }
      }
    }
  }

  private DemoOutcome job(Path home, DemoLaboratory demo, DemoDossier dossier) throws IOException {
    String name = dossier.name();
    List<String> begin =
        new ArrayList<>(
            List.of(
                "dossier",
                "new",
                name,
                "--method",
                dossier.method().id(),
                "--scale",
                dossier.scale().symbol(),
                "--material",
                dossier.material(),
                "--title",
                dossier.title(),
                "--instrument",
                dossier.instrument(),
                "--probe",
                dossier.probe(),
                "--policy",
                "incoming/policy.json"));
    dossier
        .testForceNewtons()
        .ifPresent(force -> begin.addAll(List.of("--test-force", plain(force))));
    dossier
        .zeroFrequencyHz()
        .ifPresent(zero -> begin.addAll(List.of("--zero-frequency", plain(zero))));
    say("");
    run(home, 1, begin.toArray(new String[0]));
    List<String> add = new ArrayList<>(List.of("readings", "add", name));
    dossier.readingFiles().forEach(file -> add.add("incoming/" + name + "/" + file));
    run(home, 2, add.toArray(new String[0]));
    run(home, 9, "screen", name);
    LaboratoryFolder laboratory = open(home);
    int leftOut = leaveOutWithCause(home, laboratory, name);
    run(home, 40, "fit", name);
    run(home, 30, "validate", name);
    run(home, 1, "recompute", name);
    Path responses = home.resolve("incoming").resolve(name).resolve("responses.csv");
    Analysis analysis = laboratory.draftAnalysis(name);
    Files.writeString(responses, responses(analysis), StandardCharsets.UTF_8);
    run(
        home,
        1,
        "apply",
        "--draft",
        name,
        "--in",
        "incoming/" + name + "/responses.csv",
        "--out",
        "incoming/" + name + "/hardness.csv");
    run(home, 1, "report", name);
    List<Finding> findings = Checks.ask(new Evidence(analysis, LocalDate.now(session.clock())));
    return new DemoOutcome(
        analysis,
        demo.truth(name),
        leftOut,
        Verdict.of(findings),
        open(findings, Severity.STOPS_RELEASE),
        open(findings, Severity.NEEDS_REASON),
        home.resolve("curves").resolve(name).resolve("draft"));
  }

  private static List<Finding> open(List<Finding> findings, Severity severity) {
    return findings.stream()
        .filter(f -> f.severity() == severity && f.outcome() != Outcome.PASSED)
        .toList();
  }

  private LaboratoryFolder open(Path home) {
    return LaboratoryFolder.open(
        home, session.clock(), "fettle " + Session.version(), session.user());
  }

  /** An outlier is left out only where the operator noted a cause when it was taken. */
  private int leaveOutWithCause(Path home, LaboratoryFolder laboratory, String name) {
    int leftOut = 0;
    List<Reading> readings = laboratory.campaign(name).readings();
    for (ScreeningFlag flag : Screening.flags(laboratory.campaign(name))) {
      if (flag.kind() != ScreeningFlag.Kind.OUTLIER || flag.level() > 0.01) {
        continue;
      }
      Optional<String> note =
          readings.stream()
              .filter(reading -> reading.file().equals(flag.file().orElse("")))
              .filter(reading -> reading.line() == flag.line().orElse(0))
              .findFirst()
              .flatMap(Reading::note);
      if (note.isPresent()) {
        run(
            home,
            1,
            "readings",
            "exclude",
            name,
            "--file",
            flag.file().orElseThrow(),
            "--line",
            String.valueOf(flag.line().orElseThrow()),
            "--by",
            TECHNICIAN,
            "--reason",
            "Noted when it was taken: " + note.get());
        leftOut++;
      }
    }
    return leftOut;
  }

  private static String responses(Analysis analysis) {
    var range = analysis.chosen().orElseThrow().curve().range();
    StringBuilder text = new StringBuilder("id,response,n\n");
    double span = range.responseHigh() - range.responseLow();
    for (int k = -1; k <= 11; k++) {
      double response = range.responseLow() + span * k / 10;
      text.append("part-").append(k + 2).append(',').append(Math.round(response)).append(",5\n");
    }
    return text.toString();
  }

  private static String plain(double value) {
    return java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /** Runs one command in the demo's folder and shows it with the first lines it prints. */
  private void run(Path home, int lines, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Session inner =
        new Session(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            InputStream.nullInputStream(),
            home,
            session.clock(),
            session.user(),
            session.processors());
    int status = CommandRun.execute(inner, args);
    if (status >= ExitStatus.REFUSED) {
      throw new UncheckedIOException(
          new IOException(
              "the demo's command `fettle "
                  + String.join(" ", args)
                  + "` ended with "
                  + status
                  + ": "
                  + err.toString(StandardCharsets.UTF_8)));
    }
    say("$ fettle " + quoted(args));
    out.toString(StandardCharsets.UTF_8).lines().limit(lines).forEach(line -> say("  " + line));
  }

  private static String quoted(String... args) {
    StringBuilder text = new StringBuilder();
    for (String arg : args) {
      boolean plain = arg.matches("[A-Za-z0-9._/@+-]+");
      text.append(text.isEmpty() ? "" : " ").append(plain ? arg : '"' + arg + '"');
    }
    return text.toString();
  }
}
