package fettle.library;

import java.util.List;

/**
 * What adding readings files did.
 *
 * @param added names of files that are new, as they are kept
 * @param unchanged names of files that were there already with the same bytes
 * @param readings number of readings that the dossier holds now
 */
public record AddedReadings(List<String> added, List<String> unchanged, int readings) {
  /** Copies. */
  public AddedReadings {
    added = List.copyOf(added);
    unchanged = List.copyOf(unchanged);
  }
}
