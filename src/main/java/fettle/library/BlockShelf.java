package fettle.library;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.block.BlockRules;
import fettle.block.ReferenceBlock;
import fettle.refusal.InputRefusedException;
import fettle.table.NearMatch;
import fettle.table.Shown;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** The laboratory's reference blocks, kept in {@code reference-blocks}. */
final class BlockShelf {
  static final String DIRECTORY = "reference-blocks";

  private static final String SUFFIX = ".json";

  private final Ledger ledger;

  BlockShelf(Ledger ledger) {
    this.ledger = ledger;
  }

  /** Adds blocks, or further certificates and facts to blocks that are there: all or none. */
  AddedBlocks add(List<ReferenceBlock> blocks) {
    return ledger.changing(
        () -> {
          SortedMap<String, ReferenceBlock> shelf = shelf();
          Set<String> before = Set.copyOf(shelf.keySet());
          Set<String> changed = new LinkedHashSet<>();
          for (ReferenceBlock block : blocks) {
            BlockRules.check(block, "block " + block.id());
            refuseOtherCase(block.id(), shelf);
            ReferenceBlock kept = shelf.get(block.id());
            ReferenceBlock after = kept == null ? block : new BlockMerge(kept, block).merged();
            if (!after.equals(kept)) {
              shelf.put(after.id(), after);
              changed.add(after.id());
            }
          }
          Set<String> all = new LinkedHashSet<>(blocks.stream().map(ReferenceBlock::id).toList());
          AddedBlocks outcome =
              new AddedBlocks(
                  changed.stream().filter(id -> !before.contains(id)).toList(),
                  changed.stream().filter(before::contains).toList(),
                  all.stream().filter(id -> !changed.contains(id)).toList());
          if (!changed.isEmpty()) {
            SortedMap<String, byte[]> files = new TreeMap<>();
            changed.forEach(id -> files.put(id + SUFFIX, BlockJson.write(shelf.get(id))));
            ObjectNode data = Json.object();
            outcome.added().forEach(data.putArray("added")::add);
            outcome.extended().forEach(data.putArray("extended")::add);
            ledger.commit("blocks-added", Optional.empty(), data, files);
          }
          return outcome;
        });
  }

  private static void refuseOtherCase(String id, SortedMap<String, ReferenceBlock> shelf) {
    for (String kept : shelf.keySet()) {
      if (kept.equalsIgnoreCase(id) && !kept.equals(id)) {
        throw new InputRefusedException(
            "The block's mark \"" + id + "\" differs only in case from \"" + kept + "\".",
            "block " + id,
            "the same mark for the same block, and clearly different ones for others",
            "correct it");
      }
    }
  }

  /** All blocks by mark, in order of mark, withdrawn ones too. */
  SortedMap<String, ReferenceBlock> shelf() {
    SortedMap<String, ReferenceBlock> shelf = new TreeMap<>();
    Map<String, byte[]> files = ledger.readAll();
    files.forEach(
        (path, bytes) -> {
          ReferenceBlock block = BlockJson.read(bytes, ledger.directory().resolve(path).toString());
          shelf.put(block.id(), block);
        });
    return shelf;
  }

  /** One block; refuses where there is none of that mark. */
  ReferenceBlock get(String id) {
    SortedMap<String, ReferenceBlock> shelf = shelf();
    ReferenceBlock block = shelf.get(id);
    if (block == null) {
      throw new InputRefusedException(
          "There is no block " + Shown.plain(id) + ".",
          ledger.directory().toString(),
          "the mark of a block that was added",
          NearMatch.of(id, List.copyOf(shelf.keySet()))
              .map(near -> "did you mean " + near + "?")
              .orElse("`fettle block list` shows them all"));
    }
    return block;
  }

  void withdraw(String id, String reason) {
    if (reason.isBlank()) {
      throw new InputRefusedException(
          "A block is withdrawn for a reason, and there is none.",
          "block " + Shown.plain(id),
          "the reason in words",
          "say why");
    }
    ledger.changing(
        () -> {
          ReferenceBlock block = get(id);
          if (block.withdrawn().isPresent()) {
            throw new InputRefusedException(
                "Block " + id + " was withdrawn before: " + block.withdrawn().get(),
                "block " + id,
                "a block in use",
                "nothing is left to be done");
          }
          ReferenceBlock after = BlockMerge.withdrawn(block, reason);
          SortedMap<String, byte[]> files = new TreeMap<>();
          files.put(id + SUFFIX, BlockJson.write(after));
          ObjectNode data = Json.object().put("block", id).put("reason", reason);
          ledger.commit("block-withdrawn", Optional.empty(), data, files);
          return after;
        });
  }

  ChainState chain() {
    return ledger.chain();
  }
}
