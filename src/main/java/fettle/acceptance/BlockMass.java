package fettle.acceptance;

import fettle.block.ReferenceBlock;
import java.util.OptionalDouble;

/** A light block moves under the probe. */
final class BlockMass extends BlockProperty {
  BlockMass() {
    super(
        new Statement(
            "block-mass",
            Severity.STOPS_RELEASE,
            "Is every block heavy enough for the method?",
            "A light block moves with the rod or recoils under the impact, which shifts the response"
                + " without any change of hardness.",
            "Couple the block to a heavy support and say so in the reason, or use a heavier block.",
            "ASTM A1038-19 for ultrasonic contact impedance, ISO 16859-1:2015 for type D rebound"
                + FROM_MEMORY),
        new CheckLimit("block-mass", 0.3, CheckLimit.Unit.KILOGRAM, "smallest mass, UCI"),
        new CheckLimit("block-mass", 5, CheckLimit.Unit.KILOGRAM, "smallest mass, rebound type D"),
        "mass",
        "mass_kg",
        true);
  }

  @Override
  OptionalDouble of(ReferenceBlock block) {
    return block.massKg();
  }
}
