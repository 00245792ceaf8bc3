package fettle.library;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.curve.CurveIdentity;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;

/** What a curve is for, as dossier and curve files say it. */
final class IdentityJson {
  private IdentityJson() {}

  static ObjectNode write(CurveIdentity identity) {
    ObjectNode node = Json.object();
    node.put("dossier", identity.dossier());
    identity.title().ifPresent(text -> node.put("title", text));
    node.put("material", identity.material());
    node.put("method", identity.method().id());
    node.put("scale", identity.scale().symbol());
    node.put("response", identity.responseKind().id());
    node.put("responseUnit", identity.responseKind().unit());
    identity
        .testForceNewtons()
        .ifPresent(value -> node.set("testForceNewtons", Json.number(value)));
    identity.instrument().ifPresent(text -> node.put("instrument", text));
    identity.probe().ifPresent(text -> node.put("probe", text));
    identity.zeroFrequencyHz().ifPresent(value -> node.set("zeroFrequencyHz", Json.number(value)));
    return node;
  }

  static CurveIdentity read(StrictObject object) {
    CurveIdentity identity =
        new CurveIdentity(
            object.text("dossier"),
            object.optionalText("title"),
            object.text("material"),
            Method.parse(object.text("method"), object.where("method")),
            HardnessScale.parse(object.text("scale"), object.where("scale")),
            ResponseKind.parse(object.text("response"), object.where("response")),
            object.optionalNumber("testForceNewtons"),
            object.optionalText("instrument"),
            object.optionalText("probe"),
            object.optionalNumber("zeroFrequencyHz"));
    if (!object.text("responseUnit").equals(identity.responseKind().unit())) {
      throw object.refusal(
          "responseUnit",
          "The unit is not that of the response.",
          "\"" + identity.responseKind().unit() + "\"");
    }
    object.nothingElse();
    return identity;
  }
}
