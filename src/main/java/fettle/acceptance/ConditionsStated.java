package fettle.acceptance;

import fettle.block.ReferenceBlock;
import fettle.calibration.BlockResponse;
import fettle.curve.CurveIdentity;
import fettle.quantity.Method;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** A curve holds under the conditions of its campaign, so these must be known. */
final class ConditionsStated extends StatedCheck {
  ConditionsStated() {
    super(
        new Statement(
            "conditions-stated",
            Severity.STOPS_RELEASE,
            "Are the conditions stated under which the curve holds?",
            "Whoever applies the curve must be able to compare test force, thickness, mass, surface,"
                + " product form and temperature with those of the campaign.",
            "Complete the dossier, the blocks table and the readings table.",
            "ISO/IEC 17025:2017, 7.8.2 and 7.8.3" + FROM_MEMORY));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    CurveIdentity identity = evidence.analysis().campaign().dossier().identity();
    List<BlockResponse> blocks = evidence.analysis().fittingBlocks();
    List<String> absent = new ArrayList<>();
    if (identity.method() == Method.UCI && identity.testForceNewtons().isEmpty()) {
      absent.add("test force (--test-force in the dossier)");
    }
    absent(absent, blocks, "thickness_mm", b -> b.thicknessMm().isEmpty());
    absent(absent, blocks, "mass_kg", b -> b.massKg().isEmpty());
    absent(absent, blocks, "roughness_ra_um", b -> b.roughnessRaUm().isEmpty());
    absent(absent, blocks, "product_form", b -> b.productForm().isEmpty());
    KeptReadings readings = KeptReadings.of(evidence);
    List<Reading> subject = readings.all().stream().filter(readings::bears).toList();
    List<Reading> cold = subject.stream().filter(r -> r.temperatureC().isEmpty()).toList();
    if (!cold.isEmpty()) {
      absent.add(
          "temperature_c for "
              + cold.size()
              + " of "
              + subject.size()
              + " readings, first in "
              + KeptReadings.place(cold.get(0)));
    }
    if (!absent.isEmpty()) {
      return List.of(
          missing().saying("Not stated: " + String.join("; ", absent) + ". Supply them."));
    }
    return List.of(
        passed()
            .saying(
                "Stated for all "
                    + blocks.size()
                    + " fitting blocks and "
                    + subject.size()
                    + " readings: "
                    + (identity.method() == Method.UCI
                        ? "test force "
                            + Figure.of(identity.testForceNewtons().getAsDouble(), 3)
                            + " N, "
                        : "")
                    + "thickness, mass, roughness, product form, temperature."));
  }

  private static void absent(
      List<String> absent,
      List<BlockResponse> blocks,
      String column,
      Predicate<ReferenceBlock> lacks) {
    List<BlockResponse> without = blocks.stream().filter(b -> lacks.test(b.block())).toList();
    if (!without.isEmpty()) {
      absent.add(column + " for " + SubjectBlocks.ids(without));
    }
  }
}
