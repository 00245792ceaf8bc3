package fettle.acceptance;

import fettle.block.BlockRole;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A probe is shown to be healthy before its readings count. */
final class StandardBlockBefore extends StatedCheck {
  StandardBlockBefore() {
    super(
        new Statement(
            "standard-block-before",
            Severity.STOPS_RELEASE,
            "Was the probe read on a standard block before the alloy in every run?",
            "Only a block whose response is known tells a healthy probe from an alloy that reads"
                + " oddly.",
            "Read a standard block at the start of every run and keep these readings in the same"
                + " file with the same run.",
            "ASTM A1038-19, ASTM A956-17a, ISO 16859-2:2015" + StatedCheck.FROM_MEMORY));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    KeptReadings readings = KeptReadings.of(evidence);
    if (readings.all().stream().noneMatch(r -> readings.isOf(r, BlockRole.STANDARD))) {
      return List.of(
          missing()
              .saying(
                  "No readings on a standard block; give a steel block the role standard and read"
                      + " it at the start and at the end of every run."));
    }
    List<Finding> findings = new ArrayList<>();
    for (Map.Entry<String, List<Reading>> run : readings.runs().entrySet()) {
      run.getValue().stream()
          .filter(readings::bears)
          .findFirst()
          .ifPresent(first -> findings.add(ask(readings, run.getKey(), run.getValue(), first)));
    }
    return findings;
  }

  private Finding ask(KeptReadings readings, String run, List<Reading> taken, Reading first) {
    StandardBlockSets sets = StandardBlockSets.of(readings, taken);
    if (sets.beforeFirst()) {
      return passed()
          .inFile(first.file())
          .saying(
              KeptReadings.runText(run)
                  + " begins on standard block "
                  + sets.sets().keySet().iterator().next()
                  + ".");
    }
    return failed()
        .at(first)
        .saying(
            KeptReadings.runText(run)
                + " begins on block "
                + first.block()
                + " ("
                + KeptReadings.place(first)
                + ") "
                + (sets.sets().isEmpty()
                    ? "and holds no reading on a standard block."
                    : "before any reading on a standard block."));
  }
}
