package fettle.cli;

import fettle.curve.Curve;
import fettle.curve.CurveFile;
import fettle.curve.Status;
import fettle.refusal.InputRefusedException;
import fettle.table.InputFile;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Converts responses to hardness. */
@Command(
    name = "apply",
    sortOptions = false,
    header = "Convert responses to hardness with uncertainty and status, row by row.",
    description = {
      "",
      "In: response and optionally n, sd, id. Out: the same columns and hardness,",
      "expanded_uncertainty (95 %) and status (in range, below range, above range, not a number).",
      "Outside the range there is a status and no number."
    },
    footer = {
      "",
      "Cautions:",
      "  " + Cautions.NOT_BENCH,
      "  " + Cautions.SPOT,
      "  " + Cautions.LIMIT,
      "  " + Cautions.COMPARATIVE,
      "",
      "Example: fettle apply --draft bronze-hv10 --in responses.csv --out hardness.csv"
    })
final class ApplyCommand implements Callable<Integer> {
  private final Session session;

  @Mixin private CommonOptions common;

  @Parameters(arity = "0..1", paramLabel = "CURVE", description = "A curve file.")
  private String curve;

  @Option(names = "--draft", paramLabel = "DOSSIER", description = "The draft of a dossier.")
  private String draft;

  @Option(names = "--in", paramLabel = "FILE", description = "Default: standard input.")
  private String in;

  @Option(names = "--out", paramLabel = "FILE", description = "Default: standard output.")
  private String out;

  @Option(names = "--digits", paramLabel = "D", description = "Decimals, 0 to 12. Default: 4.")
  private int digits = 4;

  ApplyCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() throws IOException {
    if (digits < 0 || digits > 12) {
      throw new InputRefusedException(
          digits + " decimals cannot be written.", "option --digits", "0 to 12", "choose fewer");
    }
    ApplyStream stream = new ApplyStream(curve(), digits);
    if (out != null) {
      OutputFile.write(session.resolve(out), partial -> toFile(stream, partial));
    } else if (common.json()) {
      convert(stream, Writer.nullWriter());
    } else {
      Writer writer = new OutputStreamWriter(session.out(), StandardCharsets.UTF_8);
      convert(stream, new BufferedWriter(writer, 1 << 16));
      writer.flush();
    }
    say(stream.counts());
    return ExitStatus.DONE;
  }

  private void toFile(ApplyStream stream, Path partial) throws IOException {
    try (Writer writer = Files.newBufferedWriter(partial, StandardCharsets.UTF_8)) {
      convert(stream, writer);
    }
  }

  private void convert(ApplyStream stream, Writer writer) throws IOException {
    if (in == null) {
      stream.run(session.in(), "standard input", writer);
    } else {
      Path file = session.resolve(in);
      if (!Files.isRegularFile(file)) {
        throw new InputRefusedException(
            "The file cannot be read.",
            in,
            "a CSV file with a column response",
            "check its name and place");
      }
      try (InputStream bytes = Files.newInputStream(file)) {
        stream.run(bytes, in, writer);
      }
    }
    writer.flush();
  }

  private Curve curve() {
    if ((curve == null) == (draft == null)) {
      throw new InputRefusedException(
          curve == null ? "No curve is named." : "Both a curve and --draft are named.",
          "the call",
          "a curve file, or --draft DOSSIER",
          "name one of them");
    }
    return draft != null
        ? common.open(session).draft(draft).curve()
        : CurveFile.read(InputFile.bytes(session.resolve(curve)), curve);
  }

  private void say(Map<Status, Long> counts) {
    if (common.json()) {
      session
          .out()
          .println(
              JsonOut.object(
                  one -> {
                    for (Status status : Status.values()) {
                      one.put(status.text(), counts.getOrDefault(status, 0L));
                    }
                  }));
      return;
    }
    StringBuilder text = new StringBuilder();
    for (Status status : Status.values()) {
      long count = counts.getOrDefault(status, 0L);
      if (count > 0) {
        text.append(text.isEmpty() ? "" : ", ").append(count).append(' ').append(status.text());
      }
    }
    session.err().println(text.isEmpty() ? "no rows" : text);
    session.err().println(Cautions.COMPARATIVE);
  }
}
