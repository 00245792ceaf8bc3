package fettle.acceptance;

import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.curve.CurveIdentity;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * A hardness that went through another material's curve is no response.
 *
 * <p>Displayed hardness rises in proportion to the certified one whatever the factor between them,
 * so the slope of ln r against ln H is 1. A frequency shift falls, with a slope near −½; a rebound
 * ratio rises, with a slope of 0.3 to 0.6. On Rockwell scales, where no logarithm is taken, the
 * slope of the straight line is 1 if the display shows the same scale.
 */
final class RawResponse extends StatedCheck {
  private static final double SLOPE_LOW = 0.8;
  private static final double SLOPE_HIGH = 1.25;
  private static final double CORRELATION = 0.9;
  private static final int FEWEST_BLOCKS = 3;
  private static final String BASE = "base setting:";

  RawResponse() {
    super(
        new Statement(
            "raw-response",
            Severity.STOPS_RELEASE,
            "Are the readings raw responses, not hardnesses that another curve has converted?",
            "A curve put on top of an unknown conversion is lost as soon as that setting changes.",
            "Take the readings again with the raw response displayed; for an instrument that shows"
                + " hardness only, use the response indicated-hardness and write its setting into"
                + " the note of every reading as \"base setting: …\".",
            COMMON_PRACTICE
                + "; derived: slopes of response against hardness (contact stiffness, plastic"
                + " rebound)"));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    CurveIdentity identity = evidence.analysis().campaign().dossier().identity();
    KeptReadings readings = KeptReadings.of(evidence);
    List<Reading> subject = readings.all().stream().filter(readings::bears).toList();
    return identity.responseKind() == ResponseKind.INDICATED_HARDNESS
        ? List.of(baseSetting(subject))
        : files(evidence.analysis(), subject, identity.method());
  }

  private Finding baseSetting(List<Reading> readings) {
    Set<String> settings = new LinkedHashSet<>();
    for (Reading reading : readings) {
      String note = reading.note().orElse("");
      int at = note.toLowerCase(Locale.ROOT).indexOf(BASE);
      String setting = at < 0 ? "" : note.substring(at + BASE.length()).strip();
      if (setting.isEmpty()) {
        return missing()
            .at(reading)
            .saying(
                "The response is an indicated hardness, but "
                    + KeptReadings.place(reading)
                    + " does not say under which setting; write \""
                    + BASE
                    + " …\" into the note of every reading.");
      }
      settings.add(setting);
      if (settings.size() > 1) {
        return failed()
            .at(reading)
            .saying(
                "The indicated hardnesses were taken under different settings: "
                    + String.join("; ", settings)
                    + " (from "
                    + KeptReadings.place(reading)
                    + " on).");
      }
    }
    return passed()
        .saying(
            "All "
                + readings.size()
                + " indicated hardnesses were taken under one setting: "
                + String.join("", settings)
                + ".");
  }

  private List<Finding> files(Analysis analysis, List<Reading> readings, Method method) {
    Map<String, BlockResponse> blocks = new LinkedHashMap<>();
    analysis.blocks().forEach(block -> blocks.put(block.block().id(), block));
    Map<String, List<Reading>> byFile = new LinkedHashMap<>();
    for (Reading reading : readings) {
      byFile.computeIfAbsent(reading.file(), file -> new ArrayList<>()).add(reading);
    }
    List<Finding> findings = new ArrayList<>();
    List<Reading> small = new ArrayList<>();
    List<String> smallFiles = new ArrayList<>();
    byFile.forEach(
        (file, own) -> {
          if (own.stream().map(Reading::block).distinct().count() < FEWEST_BLOCKS) {
            small.addAll(own);
            smallFiles.add(file);
          } else {
            findings.add(judge(List.of(file), own, blocks, method));
          }
        });
    if (!small.isEmpty()) {
      // Files of one or two blocks show no slope; together they do.
      findings.add(
          small.stream().map(Reading::block).distinct().count() < FEWEST_BLOCKS
              ? missing(Severity.NEEDS_REASON)
                  .inFile(smallFiles.get(0))
                  .saying(
                      files(smallFiles)
                          + " holds readings on fewer than three blocks, too few to tell a response"
                          + " from a hardness; look at the instrument's setting and state it.")
              : judge(smallFiles, small, blocks, method));
    }
    return findings;
  }

  private Finding judge(
      List<String> files,
      List<Reading> readings,
      Map<String, BlockResponse> blocks,
      Method method) {
    boolean ordinal = blocks.values().iterator().next().certificate().scale().isOrdinal();
    Line line = Line.of(readings, blocks, ordinal);
    boolean proportional =
        line.correlation >= CORRELATION && line.slope >= SLOPE_LOW && line.slope <= SLOPE_HIGH;
    boolean rising = method == Method.UCI && line.correlation >= CORRELATION;
    String fit =
        ": the slope of "
            + (ordinal ? "response against certified hardness" : "ln response against ln hardness")
            + " is "
            + Figure.measured(line.slope, 2)
            + " with correlation "
            + Figure.measured(line.correlation, 2);
    if (proportional || rising) {
      return failed()
          .judged(line.slope, 1)
          .inFile(files.get(0))
          .saying(
              files(files)
                  + fit
                  + "; "
                  + (proportional
                      ? "values that rise in step with the hardness look like displayed hardness"
                      : "a frequency shift falls with hardness, so these look like another quantity")
                  + ", not like a raw response.");
    }
    return passed()
        .judged(line.slope, 1)
        .inFile(files.get(0))
        .saying(files(files) + fit + ", as of a raw response.");
  }

  private static String files(List<String> files) {
    return (files.size() == 1 ? "File " : "Files ") + String.join(", ", files);
  }

  /** Slope and correlation of responses against hardness, both as logarithms where allowed. */
  private record Line(double slope, double correlation) {
    static Line of(List<Reading> readings, Map<String, BlockResponse> blocks, boolean ordinal) {
      int n = readings.size();
      double[] h = new double[n];
      double[] r = new double[n];
      double meanH = 0;
      double meanR = 0;
      for (int i = 0; i < n; i++) {
        double certified = blocks.get(readings.get(i).block()).certificate().certified();
        double displayed = readings.get(i).displayed();
        h[i] = ordinal ? certified : Math.log(certified);
        r[i] = ordinal ? displayed : Math.log(Math.max(displayed, Double.MIN_NORMAL));
        meanH += h[i] / n;
        meanR += r[i] / n;
      }
      double hh = 0;
      double rr = 0;
      double hr = 0;
      for (int i = 0; i < n; i++) {
        hh += (h[i] - meanH) * (h[i] - meanH);
        rr += (r[i] - meanR) * (r[i] - meanR);
        hr += (h[i] - meanH) * (r[i] - meanR);
      }
      boolean flat = hh == 0 || rr == 0;
      return new Line(flat ? 0 : hr / hh, flat ? 0 : hr / Math.sqrt(hh * rr));
    }
  }
}
