package fettle.acceptance;

import fettle.block.ReferenceBlock;
import java.util.OptionalDouble;

/** A thin block rings or gives way. */
final class BlockThickness extends BlockProperty {
  BlockThickness() {
    super(
        new Statement(
            "block-thickness",
            Severity.STOPS_RELEASE,
            "Is every block thick enough for the method?",
            "A thin block vibrates with the rod or yields under the impact, and so reads another"
                + " hardness than a solid one.",
            "Couple the block to a heavy support and say so in the reason, or use a thicker block.",
            "ASTM A1038-19 for ultrasonic contact impedance, ISO 16859-1:2015 for type D rebound"
                + FROM_MEMORY),
        new CheckLimit("block-thickness", 5, CheckLimit.Unit.MILLIMETRE, "smallest thickness, UCI"),
        new CheckLimit(
            "block-thickness",
            25,
            CheckLimit.Unit.MILLIMETRE,
            "smallest thickness, rebound type D"),
        "thickness",
        "thickness_mm",
        true);
  }

  @Override
  OptionalDouble of(ReferenceBlock block) {
    return block.thicknessMm();
  }
}
