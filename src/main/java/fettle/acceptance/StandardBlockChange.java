package fettle.acceptance;

import fettle.calibration.ResponseVariance;
import fettle.quantity.ResponseKind;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** A probe that moved during a run leaves no run to calibrate on. */
final class StandardBlockChange extends StatedCheck {
  private static final CheckLimit FACTOR =
      new CheckLimit(
          "standard-block-change",
          2.8,
          CheckLimit.Unit.NUMBER,
          "largest change in s_r √(1/n₁ + 1/n₂), s_r the campaign's repeatability");

  StandardBlockChange() {
    super(
        new Statement(
            "standard-block-change",
            Severity.STOPS_RELEASE,
            "Did the probe read the standard block alike at the start and at the end of every run?",
            "A change within the run is in the block means and looks like hardness.",
            "Find the cause (temperature, stale zero, worn tip), then repeat the run; its readings"
                + " are void.",
            "ISO 5725-6:1994, repeatability limit 2.8 s_r"
                + FROM_MEMORY
                + "; derived: applied to two means as 2.8 s_r √(1/n₁ + 1/n₂)"),
        FACTOR);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    KeptReadings readings = KeptReadings.of(evidence);
    List<Finding> findings = new ArrayList<>();
    for (Map.Entry<String, List<Reading>> run : readings.runs().entrySet()) {
      if (run.getValue().stream().anyMatch(readings::bears)) {
        StandardBlockSets sets = StandardBlockSets.of(readings, run.getValue());
        boolean compared = false;
        for (Map.Entry<String, List<List<Reading>>> block : sets.sets().entrySet()) {
          if (block.getValue().size() > 1) {
            findings.add(compare(evidence, run.getKey(), block.getKey(), block.getValue()));
            compared = true;
          }
        }
        if (!compared) {
          findings.add(
              missing()
                  .inFile(run.getValue().get(0).file())
                  .saying(
                      KeptReadings.runText(run.getKey())
                          + " has no standard block read both before and after other blocks; read"
                          + " one at the start and again at the end of the run."));
        }
      }
    }
    return findings;
  }

  private Finding compare(Evidence evidence, String run, String block, List<List<Reading>> sets) {
    List<Reading> first = sets.get(0);
    List<Reading> last = sets.get(sets.size() - 1);
    OptionalDouble zero = evidence.analysis().campaign().dossier().identity().zeroFrequencyHz();
    double before = mean(first, zero);
    double after = mean(last, zero);
    ResponseVariance variance = evidence.analysis().variance();
    double one = variance.repeatability() * (variance.relative() ? Math.abs(before) : 1);
    double unit = one * Math.sqrt(1.0 / first.size() + 1.0 / last.size());
    double change = after - before;
    LimitInForce limit = FACTOR.under(evidence.policy());
    double factor = change == 0 ? 0 : Math.abs(change) / unit;
    boolean held = factor <= limit.value();
    ResponseKind kind = evidence.analysis().campaign().dossier().identity().responseKind();
    String symbol = kind == ResponseKind.FREQUENCY_SHIFT ? " Hz" : "";
    return (held ? passed() : failed())
        .judged(factor, limit)
        .at(last.get(0))
        .saying(
            KeptReadings.runText(run)
                + ": standard block "
                + block
                + " read "
                + Figure.measured(before, 5)
                + symbol
                + " at the start ("
                + Figure.count(first.size(), "reading", "readings")
                + ") and "
                + Figure.measured(after, 5)
                + symbol
                + " at the end ("
                + last.size()
                + "), a change of "
                + Figure.measured(Math.abs(change), 2)
                + symbol
                + " or "
                + Figure.measured(factor, 2)
                + " of its standard uncertainties, "
                + (held ? "within the " : "above the ")
                + limit.text()
                + ".");
  }

  private static double mean(List<Reading> readings, OptionalDouble zero) {
    double sum = 0;
    for (Reading reading : readings) {
      sum += reading.response(zero);
    }
    return sum / readings.size();
  }
}
