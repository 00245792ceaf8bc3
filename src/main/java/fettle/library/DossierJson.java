package fettle.library;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.block.BlockRole;
import fettle.curve.CurveIdentity;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A dossier's own file, format {@code fettle-dossier}.
 *
 * @param identity what the curve is for
 * @param roles roles that differ from the blocks' own, by block
 */
record DossierJson(CurveIdentity identity, SortedMap<String, BlockRole> roles) {
  byte[] write() {
    ObjectNode node = FileFormat.DOSSIER.begin();
    node.set("identity", IdentityJson.write(identity));
    ObjectNode list = node.putObject("roles");
    roles.forEach((block, role) -> list.put(block, role.id()));
    return Json.readable(node);
  }

  static DossierJson read(byte[] bytes, String file) {
    StrictObject object = FileFormat.DOSSIER.read(bytes, file);
    CurveIdentity identity = IdentityJson.read(object.object("identity"));
    StrictObject list = object.object("roles");
    SortedMap<String, BlockRole> roles = new TreeMap<>();
    for (String block : list.names()) {
      roles.put(block, BlockRole.parse(list.text(block), list.where(block)));
    }
    object.nothingElse();
    return new DossierJson(identity, roles);
  }

  DossierJson with(Map<String, BlockRole> others) {
    return new DossierJson(identity, new TreeMap<>(others));
  }
}
