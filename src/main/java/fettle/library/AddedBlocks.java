package fettle.library;

import java.util.List;

/**
 * What adding blocks did.
 *
 * @param added blocks that are new
 * @param extended blocks that got a further certificate
 * @param unchanged blocks that were there already as given
 */
public record AddedBlocks(List<String> added, List<String> extended, List<String> unchanged) {
  /** Copies. */
  public AddedBlocks {
    added = List.copyOf(added);
    extended = List.copyOf(extended);
    unchanged = List.copyOf(unchanged);
  }
}
