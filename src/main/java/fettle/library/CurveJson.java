package fettle.library;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.calibration.ModelChoice;
import fettle.curve.CurveFile;
import fettle.fit.ModelId;
import fettle.refusal.InputRefusedException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A whole curve file: its content with the fingerprint, and what is said beside it. */
final class CurveJson {
  private CurveJson() {}

  /** The file in canonical form. */
  static byte[] write(String name, String state, String program, ObjectNode content) {
    ObjectNode file = FileFormat.CURVE.begin();
    file.put("name", name).put("state", state).put("program", program);
    file.put("fingerprint", Json.sha256(Json.canonical(content)));
    file.set("content", content);
    return Json.canonical(file);
  }

  /** The content; refuses one that its fingerprint does not fit. */
  static ObjectNode content(byte[] bytes, String file) {
    StrictObject object = FileFormat.CURVE.read(bytes, file);
    ObjectNode content = object.object("content").node();
    String stated = object.hash("fingerprint");
    String found = Json.sha256(Json.canonical(content));
    if (!found.equals(stated)) {
      throw new InputRefusedException(
          "The curve has been altered: its content does not have its fingerprint.",
          file,
          "fingerprint " + stated + "; the content has " + found,
          "put the file back from a backup, or fit again; nothing is computed from it");
    }
    return content;
  }

  static StoredCurve read(byte[] bytes, Path path) {
    String file = path.toString();
    StrictObject content = new StrictObject(content(bytes, file), file, "$.content");
    StrictObject object = FileFormat.CURVE.read(bytes, file);
    return new StoredCurve(
        path,
        CurveFile.read(bytes, file),
        object.hash("fingerprint"),
        object.text("program"),
        choice(content),
        inputs(content));
  }

  private static Optional<ModelChoice> choice(StrictObject content) {
    StrictObject choice = content.object("choice");
    if (!choice.has("by")) {
      return Optional.empty();
    }
    ModelId model =
        ModelId.parse(content.text("model"))
            .orElseThrow(
                () -> content.refusal("model", "There is no such model.", ModelId.accepted()));
    return Optional.of(new ModelChoice(model, choice.text("by"), choice.text("reason")));
  }

  private static List<InputFingerprint> inputs(StrictObject content) {
    List<InputFingerprint> inputs = new ArrayList<>();
    for (StrictObject input : content.objects("inputs")) {
      inputs.add(
          new InputFingerprint(input.text("kind"), input.text("name"), input.hash("sha256")));
    }
    return inputs;
  }
}
