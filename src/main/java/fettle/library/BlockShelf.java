package fettle.library;

import fettle.block.BlockRules;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.refusal.InputRefusedException;
import fettle.table.InputFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The folder {@code reference-blocks}. */
final class BlockShelf {
  private final Path folder;
  private final DurableFiles files;
  private final History history;

  BlockShelf(Path home, DurableFiles files) {
    this.folder = home.resolve("reference-blocks");
    this.files = files;
    this.history = new History(folder.resolve("history.jsonl"), files);
  }

  Path folder() {
    return folder;
  }

  Path fileOf(String id) {
    return folder.resolve(id + ".json");
  }

  List<ReferenceBlock> all() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> entries = Files.list(folder)) {
      return entries
          .filter(file -> file.getFileName().toString().endsWith(".json"))
          .filter(file -> !file.getFileName().toString().startsWith("."))
          .sorted()
          .map(BlockShelf::read)
          .toList();
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  private static ReferenceBlock read(Path file) {
    return BlockFile.read(InputFile.bytes(file), file.toString());
  }

  Optional<ReferenceBlock> find(String id) {
    BlockRules.id(id, "the block's mark");
    Path file = fileOf(id);
    return Files.exists(file) ? Optional.of(read(file)) : Optional.empty();
  }

  AddedBlocks add(List<ReferenceBlock> blocks, Instant at) {
    Map<String, ReferenceBlock> changed = new LinkedHashMap<>();
    List<String> added = new ArrayList<>();
    List<String> extended = new ArrayList<>();
    List<String> unchanged = new ArrayList<>();
    for (ReferenceBlock block : blocks) {
      Optional<ReferenceBlock> present = find(block.id());
      if (present.isEmpty()) {
        added.add(block.id());
        changed.put(block.id(), block);
        continue;
      }
      ReferenceBlock merged = merged(present.get(), block);
      if (merged.certificates().size() == present.get().certificates().size()) {
        unchanged.add(block.id());
      } else {
        extended.add(block.id());
        changed.put(block.id(), merged);
      }
    }
    changed.forEach((id, block) -> files.write(fileOf(id), BlockFile.bytes(block)));
    for (String id : changed.keySet()) {
      String sha256 = Json.sha256(BlockFile.bytes(changed.get(id)));
      history.append(
          at,
          added.contains(id) ? "block-added" : "certificate-added",
          Json.object().put("block", id).put("sha256", sha256));
    }
    return new AddedBlocks(added, extended, unchanged);
  }

  private static ReferenceBlock merged(ReferenceBlock present, ReferenceBlock block) {
    if (!BlockFile.sameFacts(present, block)) {
      throw new InputRefusedException(
          "Block "
              + block.id()
              + " is known with other facts (material, role, size, heat or modulus).",
          "block " + block.id(),
          "the same facts as in reference-blocks/" + block.id() + ".json",
          "correct the file, or give the new piece a mark of its own");
    }
    List<Certificate> certificates = new ArrayList<>(present.certificates());
    for (Certificate certificate : block.certificates()) {
      if (!certificates.contains(certificate)) {
        certificates.add(certificate);
      }
    }
    return with(present, certificates, present.withdrawn());
  }

  private static ReferenceBlock with(
      ReferenceBlock block, List<Certificate> certificates, Optional<String> withdrawn) {
    return new ReferenceBlock(
        block.id(),
        block.material(),
        block.defaultRole(),
        block.thicknessMm(),
        block.massKg(),
        block.roughnessRaUm(),
        block.heat(),
        block.productForm(),
        block.elasticModulusGpa(),
        block.elasticModulusUncertaintyGpa(),
        block.poissonRatio(),
        certificates,
        withdrawn);
  }

  void withdraw(ReferenceBlock block, String reason, Instant at) {
    if (block.withdrawn().isPresent()) {
      throw new InputRefusedException(
          "Block " + block.id() + " is withdrawn already: " + block.withdrawn().get() + ".",
          "block " + block.id(),
          "a block in use",
          "nothing is left to do");
    }
    ReferenceBlock changed = with(block, block.certificates(), Optional.of(reason));
    files.write(fileOf(block.id()), BlockFile.bytes(changed));
    history.append(
        at, "block-withdrawn", Json.object().put("block", block.id()).put("reason", reason));
  }
}
