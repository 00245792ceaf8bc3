package fettle.acceptance;

import fettle.block.ReferenceBlock;
import java.util.OptionalDouble;

/** A rough face scatters and biases the response. */
final class BlockRoughness extends BlockProperty {
  BlockRoughness() {
    super(
        new Statement(
            "block-roughness",
            Severity.STOPS_RELEASE,
            "Is the test face of every block smooth enough to calibrate on?",
            "Roughness that is not small against the indentation's depth scatters the response and"
                + " biases its mean.",
            "Have the face prepared and the block certified again, or use another block.",
            "ISO 16859-3:2015 for rebound blocks"
                + FROM_MEMORY
                + "; for ultrasonic contact impedance common practice, no source"),
        new CheckLimit("block-roughness", 0.4, CheckLimit.Unit.MICROMETRE, "largest Ra, UCI"),
        new CheckLimit("block-roughness", 0.4, CheckLimit.Unit.MICROMETRE, "largest Ra, rebound"),
        "roughness Ra",
        "roughness_ra_um",
        false);
  }

  @Override
  OptionalDouble of(ReferenceBlock block) {
    return block.roughnessRaUm();
  }
}
