package fettle.acceptance;

import fettle.curve.CurveIdentity;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A rod's own resonance moves with temperature; a stale zero moves the shift by as much. */
final class FreeFrequency extends StatedCheck {
  private static final CheckLimit RANGE =
      new CheckLimit(
          "free-frequency",
          15,
          CheckLimit.Unit.HERTZ,
          "largest range within a run that temperature does not explain");

  /** Relative change of a steel rod's resonance per kelvin (derived from E and expansion). */
  private static final double PER_KELVIN = -1.2e-4;

  FreeFrequency() {
    super(
        new Statement(
            "free-frequency",
            Severity.STOPS_RELEASE,
            "Is the free-rod frequency recorded with the readings, and steady within every run?",
            "The shift counts from the free-rod frequency; a steel rod of 78 kHz moves by about"
                + " −10 Hz per kelvin, which a stale zero turns into 0.8 % of the hardness.",
            "Record free_frequency_hz with every reading, state the zero frequency in the dossier"
                + " so that readings are corrected, and let the probe come to temperature.",
            "derived: resonance of a free rod, −1.2·10⁻⁴ per kelvin for steel"),
        RANGE);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    CurveIdentity identity = evidence.analysis().campaign().dossier().identity();
    if (identity.method() != Method.UCI
        || identity.responseKind() != ResponseKind.FREQUENCY_SHIFT) {
      return List.of(
          passed().saying("Not asked: the response is no frequency shift of a contact impedance."));
    }
    KeptReadings readings = KeptReadings.of(evidence);
    LimitInForce limit = RANGE.under(evidence.policy());
    List<Finding> findings = new ArrayList<>();
    for (Map.Entry<String, List<Reading>> run : readings.runs().entrySet()) {
      List<Reading> subject = run.getValue().stream().filter(readings::bears).toList();
      if (!subject.isEmpty()) {
        findings.add(ask(run.getKey(), subject, limit));
      }
    }
    return findings;
  }

  private Finding ask(String run, List<Reading> readings, LimitInForce limit) {
    List<Reading> without =
        readings.stream().filter(reading -> reading.freeFrequencyHz().isEmpty()).toList();
    if (!without.isEmpty()) {
      return missing()
          .at(without.get(0))
          .saying(
              KeptReadings.runText(run)
                  + ": "
                  + without.size()
                  + " of "
                  + Figure.count(readings.size(), "reading has", "readings have")
                  + " no free-rod frequency, the first in "
                  + KeptReadings.place(without.get(0))
                  + "; record it in the column free_frequency_hz.");
    }
    boolean temperatures = readings.stream().allMatch(r -> r.temperatureC().isPresent());
    double reference = temperatures ? readings.get(0).temperatureC().getAsDouble() : 0;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    Reading lowest = readings.get(0);
    Reading highest = readings.get(0);
    for (Reading reading : readings) {
      double f = reading.freeFrequencyHz().getAsDouble();
      if (temperatures) {
        f -= PER_KELVIN * f * (reading.temperatureC().getAsDouble() - reference);
      }
      if (f < low) {
        low = f;
        lowest = reading;
      }
      if (f > high) {
        high = f;
        highest = reading;
      }
    }
    double range = high - low;
    boolean steady = range <= limit.value();
    Reading later = readings.indexOf(lowest) > readings.indexOf(highest) ? lowest : highest;
    Answer answer = steady ? passed() : failed(Severity.NEEDS_REASON).at(later);
    return answer
        .judged(range, limit)
        .saying(
            KeptReadings.runText(run)
                + ": the free-rod frequency "
                + (temperatures ? "freed of the temperature's share " : "")
                + "ranges over "
                + Figure.of(range, 2)
                + " Hz"
                + (steady
                    ? ", within the " + limit.text()
                    : " between "
                        + KeptReadings.place(lowest)
                        + " and "
                        + KeptReadings.place(highest)
                        + ", above the "
                        + limit.text())
                + ".");
  }
}
