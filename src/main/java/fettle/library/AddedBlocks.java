package fettle.library;

import java.util.List;

/**
 * What adding blocks did.
 *
 * @param added marks of blocks that are new
 * @param extended marks of blocks that were there and got further certificates or facts
 * @param unchanged marks of blocks of which all was there already
 */
public record AddedBlocks(List<String> added, List<String> extended, List<String> unchanged) {
  /** Copies. */
  public AddedBlocks {
    added = List.copyOf(added);
    extended = List.copyOf(extended);
    unchanged = List.copyOf(unchanged);
  }
}
