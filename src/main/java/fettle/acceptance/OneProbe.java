package fettle.acceptance;

import fettle.reading.Reading;
import java.util.List;
import java.util.Optional;

/** A curve belongs to one probe until it is shown to hold for another. */
final class OneProbe extends StatedCheck {
  OneProbe() {
    super(
        new Statement(
            "one-probe",
            Severity.STOPS_RELEASE,
            "Were all readings taken with the probe that the curve is for?",
            "Two probes of one kind differ by 3 % to 5 % of hardness; readings of both make a curve"
                + " that holds for neither.",
            "Leave out the readings of the other probe with this reason, or correct the probe in"
                + " the dossier; a second probe needs a transfer of its own.",
            "ISO/IEC 17025:2017, 6.4.13 and 7.2.2"
                + FROM_MEMORY
                + "; transfer to a second probe: derived"));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    Optional<String> probe = evidence.analysis().campaign().dossier().identity().probe();
    KeptReadings readings = KeptReadings.of(evidence);
    List<Reading> subject = readings.all().stream().filter(readings::bears).toList();
    List<Reading> unnamed = subject.stream().filter(r -> r.probe().isEmpty()).toList();
    if (probe.isEmpty()) {
      return List.of(
          missing(Severity.NEEDS_REASON)
              .saying(
                  "The dossier does not name its probe; give its mark with --probe in the"
                      + " dossier."));
    }
    for (Reading reading : subject) {
      if (reading.probe().isPresent()
          && !reading.probe().get().strip().equals(probe.get().strip())) {
        long others = subject.stream().filter(r -> r.probe().equals(reading.probe())).count();
        return List.of(
            failed()
                .judged(others, 0)
                .at(reading)
                .saying(
                    "The curve is for probe "
                        + probe.get()
                        + ", but "
                        + Figure.count(others, "reading was", "readings were")
                        + " taken with probe "
                        + reading.probe().get()
                        + ", the first in "
                        + KeptReadings.place(reading)
                        + "."));
      }
    }
    if (!unnamed.isEmpty()) {
      return List.of(
          missing(Severity.NEEDS_REASON)
              .at(unnamed.get(0))
              .saying(
                  unnamed.size()
                      + " of "
                      + subject.size()
                      + " readings do not name their probe, the first in "
                      + KeptReadings.place(unnamed.get(0))
                      + "; fill the column probe of the readings table."));
    }
    return List.of(
        passed()
            .saying(
                "All " + subject.size() + " readings were taken with probe " + probe.get() + "."));
  }
}
