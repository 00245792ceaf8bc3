package fettle.library;

import java.util.List;

/**
 * What adding readings files did.
 *
 * @param added files that are new
 * @param unchanged files that were there already with the same bytes
 * @param readings readings that the dossier holds now
 */
public record AddedReadings(List<String> added, List<String> unchanged, int readings) {
  /** Copies. */
  public AddedReadings {
    added = List.copyOf(added);
    unchanged = List.copyOf(unchanged);
  }
}
