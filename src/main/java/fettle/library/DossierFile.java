package fettle.library;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.block.BlockRole;
import fettle.curve.CurveIdentity;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import fettle.refusal.InputRefusedException;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** A dossier's own file as JSON, format {@code fettle-dossier}, number 1. */
final class DossierFile {
  private static final String FORMAT = "fettle-dossier";
  private static final List<String> TOP = List.of("format", "formatVersion", "identity", "roles");
  private static final List<String> IDENTITY =
      List.of(
          "dossier",
          "title",
          "material",
          "method",
          "scale",
          "response",
          "responseUnit",
          "testForceNewtons",
          "instrument",
          "probe",
          "zeroFrequencyHz");
  private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,62}");
  private static final Pattern RESERVED =
      Pattern.compile("con|prn|aux|nul|com[0-9]|lpt[0-9]", Pattern.CASE_INSENSITIVE);

  private DossierFile() {}

  /**
   * Checks a dossier's name, which is also its folder's.
   *
   * @throws InputRefusedException if it cannot be
   */
  static void requireName(String name) {
    if (!NAME.matcher(name).matches() || RESERVED.matcher(name).matches()) {
      throw new InputRefusedException(
          "\"" + printable(name) + "\" cannot be a dossier's name.",
          "the name of the dossier",
          "1 to 63 lower-case letters, digits and hyphens, the first no hyphen, and no name that an"
              + " operating system reserves",
          "choose another name; --title takes free text");
    }
  }

  private static String printable(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .limit(80)
        .forEach(
            c -> {
              if (Character.isISOControl(c)) {
                shown.append(String.format(Locale.ROOT, "<U+%04X>", c));
              } else {
                shown.appendCodePoint(c);
              }
            });
    return shown.toString();
  }

  static byte[] bytes(CurveIdentity identity, Map<String, BlockRole> roles) {
    ObjectNode node = Json.object();
    node.put("format", FORMAT).put("formatVersion", 1);
    node.set("identity", CurveContent.identity(identity));
    ObjectNode list = node.putObject("roles");
    roles.forEach((block, role) -> list.put(block, role.id()));
    return Json.canonical(node);
  }

  /** What the file says. */
  record Content(CurveIdentity identity, Map<String, BlockRole> roles) {}

  static Content read(byte[] bytes, String file) {
    Fields top = new Fields(Json.read(bytes, file), file);
    Json.requireFormat(top.object(), FORMAT, 1, file);
    top.allow(TOP);
    Fields identity =
        top.optionalObject("identity")
            .orElseThrow(() -> top.refusal("identity", "The identity is missing.", "an object"));
    identity.allow(IDENTITY);
    Map<String, BlockRole> roles = new LinkedHashMap<>();
    top.optionalObject("roles")
        .ifPresent(
            fields -> {
              for (Iterator<String> ids = fields.object().fieldNames(); ids.hasNext(); ) {
                String id = ids.next();
                roles.put(id, BlockRole.parse(fields.text(id), fields.where(id)));
              }
            });
    return new Content(
        new CurveIdentity(
            identity.text("dossier"),
            identity.optionalText("title"),
            identity.text("material"),
            Method.parse(identity.text("method"), identity.where("method")),
            HardnessScale.parse(identity.text("scale"), identity.where("scale")),
            ResponseKind.parse(identity.text("response"), identity.where("response")),
            identity.optionalNumber("testForceNewtons"),
            identity.optionalText("instrument"),
            identity.optionalText("probe"),
            identity.optionalNumber("zeroFrequencyHz")),
        roles);
  }
}
