package fettle.acceptance;

import fettle.block.BlockRole;
import fettle.calibration.BlockResponse;
import java.util.List;

/** The blocks on which a curve stands or falls: those that shape it and those that prove it. */
final class SubjectBlocks {
  private SubjectBlocks() {}

  static List<BlockResponse> of(Evidence evidence) {
    return evidence.analysis().blocks().stream()
        .filter(block -> block.role() == BlockRole.FIT || block.role() == BlockRole.CHECK)
        .toList();
  }

  static String ids(List<BlockResponse> blocks) {
    return String.join(", ", blocks.stream().map(block -> block.block().id()).toList());
  }
}
