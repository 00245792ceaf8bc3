package fettle.curve;

import fettle.fit.ArgumentScaling;
import fettle.fit.ModelId;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import fettle.refusal.InputRefusedException;
import java.util.List;

/**
 * Reads a curve file, JSON of format {@code fettle-curve}, number 1, with the JDK alone.
 *
 * <p>The reader takes what evaluation needs: the curve evaluates to the same bits as the one that
 * was written. Whether the numbers are still the ones that were kept is told by the file's {@code
 * fingerprint}, the SHA-256 of its {@code content} in canonical form (RFC 8785), which the
 * laboratory folder checks at every opening.
 */
public final class CurveFile {
  /** The format's name. */
  public static final String FORMAT = "fettle-curve";

  /** The format's number, the only one that is read and written. */
  public static final int FORMAT_VERSION = 1;

  static final String FETCH = "take the file anew from the laboratory folder or a backup";

  private static final int LARGEST = 16 << 20;

  private CurveFile() {}

  /**
   * Reads a curve.
   *
   * @param bytes the file's bytes, at most 16 MiB
   * @param file name of the file for messages
   * @return the curve
   * @throws InputRefusedException if it is no curve file, of another number, cut off or garbled
   */
  public static Curve read(byte[] bytes, String file) {
    if (bytes.length > LARGEST) {
      throw new InputRefusedException(
          "The file is larger than 16 MiB.", file, "a curve file, seldom above 1 MiB", FETCH);
    }
    JsonFields fields = JsonFields.of(JsonText.parse(bytes, file), file, "$");
    requireFormat(fields, file);
    try {
      return curve(fields.object("content"));
    } catch (IllegalArgumentException impossible) {
      throw new InputRefusedException(
          "The curve in the file cannot be: " + impossible.getMessage() + ".",
          file + ", at $.content",
          "the values of one curve",
          FETCH);
    }
  }

  private static void requireFormat(JsonFields fields, String file) {
    if (!fields.has("format") || !fields.text("format").equals(FORMAT)) {
      throw new InputRefusedException(
          fields.has("format")
              ? "The file is of another kind: \"" + printable(fields.text("format")) + "\"."
              : "The file does not say that it is a curve file.",
          file,
          "a file of format " + FORMAT,
          "name the file curve.json of a dossier");
    }
    double number = fields.number("formatVersion");
    if (number != FORMAT_VERSION) {
      boolean newer = number > FORMAT_VERSION;
      throw new InputRefusedException(
          "The file is of format number "
              + printable(shown(number))
              + ", which is too "
              + (newer ? "new." : "old."),
          file,
          "format number " + FORMAT_VERSION,
          newer ? "use a newer version of the program" : FETCH);
    }
  }

  private static String shown(double number) {
    return number == Math.rint(number) && Math.abs(number) < 1e9
        ? Long.toString((long) number)
        : Double.toString(number);
  }

  private static String printable(String text) {
    String plain = text.replaceAll("\\p{C}", "?");
    return plain.length() > 60 ? plain.substring(0, 60) + "…" : plain;
  }

  private static Curve curve(JsonFields content) {
    ModelId model =
        ModelId.parse(content.text("model"))
            .orElseThrow(() -> content.refusal("model", ModelId.accepted()));
    int p = model.parameterCount();
    JsonFields argument = content.object("argument");
    JsonFields between = content.object("betweenBlock");
    return new Curve(
        identity(content.object("identity")),
        model,
        new ArgumentScaling(
            argument.truth("logarithmic"), argument.number("centre"), argument.number("scale")),
        content.numbers("parameters", p),
        content.numbers("covariance", p * p),
        between.truth("relative"),
        between.number("tau"),
        between.objects("nodes").stream().map(node -> node(node, p)).toList(),
        content.objects("sharedSources").stream()
            .map(s -> new SharedSource(s.text("name"), s.numbers("deltaParameters", p)))
            .toList(),
        runs(content.object("runs"), p),
        scatter(content.object("responseScatter")),
        content.objects("covarianceParts").stream().map(part -> part(part, p)).toList(),
        content.number("simultaneousFactor"),
        range(content.object("range")));
  }

  private static CurveIdentity identity(JsonFields fields) {
    return new CurveIdentity(
        fields.text("dossier"),
        fields.optionalText("title"),
        fields.text("material"),
        Method.parse(fields.text("method"), fields.where("method")),
        HardnessScale.parse(fields.text("scale"), fields.where("scale")),
        ResponseKind.parse(fields.text("response"), fields.where("response")),
        fields.optionalNumber("testForceNewtons"),
        fields.optionalText("instrument"),
        fields.optionalText("probe"),
        fields.optionalNumber("zeroFrequencyHz"));
  }

  private static PosteriorNode node(JsonFields node, int p) {
    return new PosteriorNode(
        node.number("weight"),
        node.number("tau"),
        node.numbers("parameters", p),
        node.numbers("covariance", p * p));
  }

  private static RunEffects runs(JsonFields runs, int p) {
    List<RunEffects.Node> nodes =
        runs.objects("nodes").stream()
            .map(n -> new RunEffects.Node(n.number("weight"), n.number("standardDeviation")))
            .toList();
    return new RunEffects(
        runs.truth("relative"),
        runs.number("standardDeviation"),
        runs.truth("estimated"),
        runs.rows("deltaParameters", p),
        nodes);
  }

  private static ResponseScatter scatter(JsonFields scatter) {
    return new ResponseScatter(
        scatter.truth("relative"),
        scatter.number("repeatability"),
        scatter.number("degreesOfFreedom"),
        scatter.number("resolution"),
        scatter.number("operator"),
        scatter.number("drift"),
        scatter.number("temperature"));
  }

  private static CovariancePart part(JsonFields part, int p) {
    return new CovariancePart(
        part.text("source"), part.numbers("covariance", p * p), part.truth("present"));
  }

  private static ValidRange range(JsonFields range) {
    return new ValidRange(
        range.number("responseLow"),
        range.number("responseHigh"),
        range.number("hardnessLow"),
        range.number("hardnessHigh"),
        range.text("lowLimitedBy"),
        range.text("highLimitedBy"));
  }
}
