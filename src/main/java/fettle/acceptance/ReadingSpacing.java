package fettle.acceptance;

import fettle.calibration.BlockResponse;
import fettle.curve.CurveIdentity;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.List;

/**
 * Indentations too close together harden each other's ground. The diagonal of a Vickers pyramid is
 * d = √(0.1891 F / HV) mm with F in N (ISO 6507-1, definition of HV).
 */
final class ReadingSpacing extends StatedCheck {
  private static final CheckLimit DIAGONALS =
      new CheckLimit(
          "reading-spacing",
          3,
          CheckLimit.Unit.NUMBER,
          "smallest distance between centres, UCI, in diagonals");
  private static final CheckLimit DIAGONALS_LIGHT =
      new CheckLimit(
          "reading-spacing-light-metal",
          6,
          CheckLimit.Unit.NUMBER,
          "the same for light metals, taken as those below 100 GPa");
  private static final CheckLimit REBOUND =
      new CheckLimit(
          "reading-spacing-rebound",
          3,
          CheckLimit.Unit.MILLIMETRE,
          "smallest distance between centres, rebound type D");
  private static final double LIGHT_BELOW_GPA = 100;

  ReadingSpacing() {
    super(
        new Statement(
            "reading-spacing",
            Severity.STOPS_RELEASE,
            "Do the readings on every block keep their distance from each other?",
            "Every indentation hardens the metal around it; a second one in that zone reads too"
                + " hard.",
            "Exclude the later of the two readings with this reason, and take another elsewhere.",
            "ISO 6507-1:2018 for pyramid indentations, ISO 16859-1:2015 for type D" + FROM_MEMORY),
        DIAGONALS,
        DIAGONALS_LIGHT,
        REBOUND);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    CurveIdentity identity = evidence.analysis().campaign().dossier().identity();
    List<Finding> findings = new ArrayList<>();
    for (BlockResponse block : SubjectBlocks.of(evidence)) {
      findings.add(ask(evidence, block, identity));
    }
    return findings;
  }

  private Finding ask(Evidence evidence, BlockResponse block, CurveIdentity identity) {
    String id = block.block().id();
    List<Reading> placed =
        evidence.analysis().campaign().readings().stream()
            .filter(r -> r.block().equals(id) && r.xMm().isPresent() && r.yMm().isPresent())
            .toList();
    if (placed.size() < 2) {
      return missing(Severity.NEEDS_REASON)
          .on(block)
          .saying(
              "Block "
                  + id
                  + ": the places of its readings are not recorded; give x_mm and y_mm in the"
                  + " readings table, or state in the reason how the distance was kept.");
    }
    LimitInForce limit = REBOUND.under(evidence.policy());
    double smallest = limit.value();
    String because = limit.text();
    if (identity.method() == Method.UCI) {
      if (identity.testForceNewtons().isEmpty()
          || identity.scale().family() != HardnessScale.Family.VICKERS) {
        return missing(Severity.NEEDS_REASON)
            .on(block)
            .saying(
                "Block "
                    + id
                    + ": the size of an indentation follows from the probe's test force and a"
                    + " Vickers hardness; one of them is missing, so state in the reason how the"
                    + " distance was kept.");
      }
      boolean light =
          block.block().elasticModulusGpa().orElse(Double.POSITIVE_INFINITY) < LIGHT_BELOW_GPA;
      limit = (light ? DIAGONALS_LIGHT : DIAGONALS).under(evidence.policy());
      double diagonal =
          Math.sqrt(
              0.1891 * identity.testForceNewtons().getAsDouble() / block.certificate().certified());
      smallest = limit.value() * diagonal;
      because =
          limit.figure()
              + " diagonals of "
              + Figure.of(diagonal, 2)
              + " mm ("
              + limit.origin()
              + ")";
    }
    return nearest(block, placed, smallest, because);
  }

  private Finding nearest(
      BlockResponse block, List<Reading> placed, double smallest, String because) {
    double least = Double.POSITIVE_INFINITY;
    Reading one = placed.get(0);
    Reading other = placed.get(1);
    for (int i = 1; i < placed.size(); i++) {
      for (int j = 0; j < i; j++) {
        double distance = distance(placed.get(i), placed.get(j));
        if (distance < least) {
          least = distance;
          one = placed.get(j);
          other = placed.get(i);
        }
      }
    }
    String nearest =
        "Block "
            + block.block().id()
            + ": the nearest two of "
            + placed.size()
            + " readings are "
            + Figure.of(least, 2)
            + " mm apart";
    if (least >= smallest) {
      return passed()
          .judged(least, smallest)
          .on(block)
          .saying(
              nearest + ", at least " + Figure.of(smallest, 2) + " mm is asked: " + because + ".");
    }
    return failed()
        .judged(least, smallest)
        .at(other)
        .saying(
            nearest
                + " ("
                + KeptReadings.place(one)
                + " and "
                + KeptReadings.place(other)
                + "), but "
                + Figure.of(smallest, 2)
                + " mm is asked: "
                + because
                + ".");
  }

  private static double distance(Reading a, Reading b) {
    double x = a.xMm().getAsDouble() - b.xMm().getAsDouble();
    double y = a.yMm().getAsDouble() - b.yMm().getAsDouble();
    return Math.sqrt(x * x + y * y);
  }
}
