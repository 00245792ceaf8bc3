package fettle.library;

import fettle.block.BlockRole;
import fettle.reading.Exclusion;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a dossier's events add up to.
 *
 * @param readings readings files: hash by name, in order of name
 * @param roles roles assigned here, by block
 * @param exclusions readings left out, in the order in which that was decided
 */
record DossierState(
    SortedMap<String, String> readings,
    SortedMap<String, BlockRole> roles,
    List<Exclusion> exclusions) {
  static final String BEGUN = "dossier-begun";
  static final String ROLE = "role-assigned";
  static final String READINGS = "readings-added";
  static final String EXCLUDED = "reading-excluded";
  static final String INCLUDED = "reading-included";
  static final String DRAFT = "draft-kept";

  static final String READINGS_FOLDER = "readings/";

  static DossierState of(List<Event> events, String file) {
    SortedMap<String, String> readings = new TreeMap<>();
    SortedMap<String, BlockRole> roles = new TreeMap<>();
    List<Exclusion> exclusions = new ArrayList<>();
    for (Event event : events) {
      StrictObject data = new StrictObject(event.data(), file + ", line " + event.seq(), "$.data");
      switch (event.type()) {
        case READINGS ->
            event
                .files()
                .forEach(
                    mark ->
                        readings.put(
                            mark.path().substring(READINGS_FOLDER.length()), mark.sha256()));
        case ROLE ->
            roles.put(data.text("block"), BlockRole.parse(data.text("role"), data.where("role")));
        case EXCLUDED ->
            exclusions.add(
                new Exclusion(
                    data.text("file"),
                    data.integer("line"),
                    event.by().orElse("?"),
                    data.text("reason"),
                    event.at()));
        case INCLUDED ->
            exclusions.removeIf(
                one -> one.file().equals(data.text("file")) && one.line() == data.integer("line"));
        default -> {
          // The beginning and drafts change nothing of this.
        }
      }
    }
    return new DossierState(readings, roles, List.copyOf(exclusions));
  }

  boolean isExcluded(String file, int line) {
    return exclusions.stream().anyMatch(one -> one.file().equals(file) && one.line() == line);
  }
}
