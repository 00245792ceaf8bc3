package fettle.calibration;

import fettle.block.ReferenceBlock;
import fettle.reading.Exclusion;
import fettle.reading.Reading;
import java.util.List;

/**
 * All that a fit rests on.
 *
 * @param dossier the job
 * @param blocks every block that has readings here
 * @param readings all readings, excluded ones too
 * @param exclusions readings left out, with person and reason
 */
public record Campaign(
    Dossier dossier,
    List<ReferenceBlock> blocks,
    List<Reading> readings,
    List<Exclusion> exclusions) {
  /** Copies. */
  public Campaign {
    blocks = List.copyOf(blocks);
    readings = List.copyOf(readings);
    exclusions = List.copyOf(exclusions);
  }

  /**
   * Whether a reading is left out.
   *
   * @param reading the reading
   * @return true if an exclusion covers it
   */
  public boolean isExcluded(Reading reading) {
    for (Exclusion exclusion : exclusions) {
      if (exclusion.covers(reading)) {
        return true;
      }
    }
    return false;
  }
}
