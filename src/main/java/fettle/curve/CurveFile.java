package fettle.curve;

import fettle.fit.ArgumentScaling;
import fettle.fit.ModelId;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import fettle.refusal.InputRefusedException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads a curve file, JSON format {@code fettle-curve}, number 1, with the JDK alone.
 *
 * <p>The reader takes what evaluation needs. Whether the file is the one that was written is told
 * by its fingerprint, which the library verifies.
 */
public final class CurveFile {
  /** Name of the format. */
  public static final String FORMAT = "fettle-curve";

  /** Newest number of the format that this program reads and the one it writes. */
  public static final int FORMAT_VERSION = 1;

  private static final int LARGEST = 16 << 20;

  private final String file;

  private CurveFile(String file) {
    this.file = file;
  }

  /**
   * Reads a curve.
   *
   * @param bytes content of the file
   * @param file file name for messages
   * @return the curve
   * @throws InputRefusedException if it is not a whole curve file of a known format
   */
  public static Curve read(byte[] bytes, String file) {
    CurveFile reader = new CurveFile(file);
    try {
      if (bytes.length > LARGEST) {
        throw new IllegalArgumentException("the file is larger than 16 MiB");
      }
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return reader.curve(new Node(reader.map(StrictJson.parse(text), "the document"), ""));
    } catch (CharacterCodingException failure) {
      throw reader.refused("it is not text in UTF-8");
    } catch (IllegalArgumentException | ClassCastException failure) {
      throw reader.refused(failure.getMessage());
    }
  }

  private InputRefusedException refused(String why) {
    return new InputRefusedException(
        "The curve file cannot be used: " + why + ".",
        file,
        "a whole file of format " + FORMAT + ", number " + FORMAT_VERSION,
        "name a curve file written by fettle, or restore it from a backup");
  }

  /** One object with the path to it. */
  private record Node(Map<String, Object> fields, String path) {}

  @SuppressWarnings("unchecked")
  private Map<String, Object> map(Object value, String what) {
    if (value instanceof Map<?, ?> map) {
      return (Map<String, Object>) map;
    }
    throw new IllegalArgumentException(what + " is not an object");
  }

  private Node child(Node node, String name) {
    String path = node.path() + "/" + name;
    return new Node(map(node.fields().get(name), path), path);
  }

  private String text(Node node, String name) {
    if (node.fields().get(name) instanceof String text) {
      return text;
    }
    throw new IllegalArgumentException(node.path() + "/" + name + " is not a text");
  }

  private Optional<String> optionalText(Node node, String name) {
    return node.fields().get(name) == null ? Optional.empty() : Optional.of(text(node, name));
  }

  private double number(Node node, String name) {
    if (node.fields().get(name) instanceof Double number) {
      return number;
    }
    throw new IllegalArgumentException(node.path() + "/" + name + " is not a number");
  }

  private OptionalDouble optionalNumber(Node node, String name) {
    return node.fields().get(name) == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(number(node, name));
  }

  private boolean flag(Node node, String name) {
    if (node.fields().get(name) instanceof Boolean flag) {
      return flag;
    }
    throw new IllegalArgumentException(node.path() + "/" + name + " is not true or false");
  }

  private List<?> list(Node node, String name) {
    if (node.fields().get(name) instanceof List<?> list) {
      return list;
    }
    throw new IllegalArgumentException(node.path() + "/" + name + " is not a list");
  }

  private double[] numbers(Node node, String name) {
    return numbers(list(node, name), node.path() + "/" + name);
  }

  private double[] numbers(Object value, String path) {
    if (!(value instanceof List<?> list)) {
      throw new IllegalArgumentException(path + " is not a list");
    }
    double[] numbers = new double[list.size()];
    for (int i = 0; i < numbers.length; i++) {
      if (!(list.get(i) instanceof Double number)) {
        throw new IllegalArgumentException(path + "/" + i + " is not a number");
      }
      numbers[i] = number;
    }
    return numbers;
  }

  private List<Node> nodes(Node node, String name) {
    List<Node> children = new ArrayList<>();
    List<?> list = list(node, name);
    for (int i = 0; i < list.size(); i++) {
      String path = node.path() + "/" + name + "/" + i;
      children.add(new Node(map(list.get(i), path), path));
    }
    return children;
  }

  private Curve curve(Node top) {
    if (!FORMAT.equals(top.fields().get("format"))) {
      throw new IllegalArgumentException("it is of another kind");
    }
    double version = number(top, "formatVersion");
    if (version > FORMAT_VERSION) {
      throw new IllegalArgumentException(
          "it was written by a newer program (format number " + (long) version + ")");
    }
    Node content = child(top, "content");
    Node argument = child(content, "argument");
    String name = text(content, "model");
    ModelId model =
        ModelId.parse(name)
            .orElseThrow(() -> new IllegalArgumentException("model \"" + name + "\" is not known"));
    Node scatter = child(content, "betweenBlock");
    List<PosteriorNode> posterior = new ArrayList<>();
    for (Node node : nodes(scatter, "nodes")) {
      posterior.add(
          new PosteriorNode(
              number(node, "weight"),
              number(node, "tau"),
              numbers(node, "parameters"),
              numbers(node, "covariance")));
    }
    List<SharedSource> shared = new ArrayList<>();
    for (Node node : nodes(content, "sharedSources")) {
      shared.add(new SharedSource(text(node, "name"), numbers(node, "deltaParameters")));
    }
    List<CovariancePart> parts = new ArrayList<>();
    for (Node node : nodes(content, "covarianceParts")) {
      parts.add(
          new CovariancePart(
              text(node, "source"), numbers(node, "covariance"), flag(node, "present")));
    }
    return new Curve(
        identity(child(content, "identity")),
        model,
        new ArgumentScaling(
            flag(argument, "logarithmic"), number(argument, "centre"), number(argument, "scale")),
        numbers(content, "parameters"),
        numbers(content, "covariance"),
        flag(scatter, "relative"),
        number(scatter, "tau"),
        posterior,
        shared,
        runs(child(content, "runs")),
        responseScatter(child(content, "responseScatter")),
        parts,
        number(content, "simultaneousFactor"),
        range(child(content, "range")));
  }

  private CurveIdentity identity(Node node) {
    String where = file + ", " + node.path();
    return new CurveIdentity(
        text(node, "dossier"),
        optionalText(node, "title"),
        text(node, "material"),
        Method.parse(text(node, "method"), where + "/method"),
        HardnessScale.parse(text(node, "scale"), where + "/scale"),
        ResponseKind.parse(text(node, "response"), where + "/response"),
        optionalNumber(node, "testForceNewtons"),
        optionalText(node, "instrument"),
        optionalText(node, "probe"),
        optionalNumber(node, "zeroFrequencyHz"));
  }

  private RunEffects runs(Node node) {
    List<double[]> delta = new ArrayList<>();
    List<?> list = list(node, "deltaParameters");
    for (int i = 0; i < list.size(); i++) {
      delta.add(numbers(list.get(i), node.path() + "/deltaParameters/" + i));
    }
    List<RunEffects.Node> nodes = new ArrayList<>();
    for (Node one : nodes(node, "nodes")) {
      nodes.add(new RunEffects.Node(number(one, "weight"), number(one, "standardDeviation")));
    }
    return new RunEffects(
        flag(node, "relative"),
        number(node, "standardDeviation"),
        flag(node, "estimated"),
        delta,
        nodes);
  }

  private ResponseScatter responseScatter(Node node) {
    return new ResponseScatter(
        flag(node, "relative"),
        number(node, "repeatability"),
        number(node, "degreesOfFreedom"),
        number(node, "resolution"),
        number(node, "operator"),
        number(node, "drift"),
        number(node, "temperature"));
  }

  private ValidRange range(Node node) {
    return new ValidRange(
        number(node, "responseLow"),
        number(node, "responseHigh"),
        number(node, "hardnessLow"),
        number(node, "hardnessHigh"),
        text(node, "lowLimitedBy"),
        text(node, "highLimitedBy"));
  }
}
