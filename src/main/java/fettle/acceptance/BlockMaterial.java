package fettle.acceptance;

import fettle.calibration.BlockResponse;
import java.util.List;
import java.util.Locale;

/** A curve speaks of the material its blocks are made of. */
final class BlockMaterial extends StatedCheck {
  BlockMaterial() {
    super(
        new Statement(
            "block-material",
            Severity.STOPS_RELEASE,
            "Are all blocks of the material family that the curve is for?",
            "Frequency shift and rebound depend on the elastic modulus as well as on hardness, so a"
                + " block of another family lies on another curve.",
            "Take the block out of the dossier, or correct the material in the blocks table or in"
                + " the dossier.",
            COMMON_PRACTICE));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    String material = evidence.analysis().campaign().dossier().identity().material();
    return SubjectBlocks.of(evidence).stream().map(block -> ask(block, material)).toList();
  }

  private Finding ask(BlockResponse block, String material) {
    String id = block.block().id();
    if (block.block().material().isEmpty()) {
      return missing()
          .on(block)
          .saying(
              "Block "
                  + id
                  + ": its material is not stated; fill the column material of the blocks table.");
    }
    String own = block.block().material().get();
    boolean same = normal(own).equals(normal(material));
    return (same ? passed() : failed())
        .on(block)
        .saying(
            "Block "
                + id
                + " is of \""
                + own
                + (same ? "\", as the curve." : "\", but the curve is for \"" + material + "\"."));
  }

  /** Case and spacing make no other material. */
  private static String normal(String material) {
    return material.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
  }
}
