package fettle.fit;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The name of a model, before it is bound to data.
 *
 * @param name as in files and options, for example {@code polynomial-2}
 */
public record ModelId(String name) {
  private static final Pattern SERIES = Pattern.compile("(polynomial|log-polynomial)-(\\d{1,2})");

  /** Models that a dossier's fit tries by itself, in the order in which they are listed. */
  public static final List<ModelId> CANDIDATES =
      List.of(
          new ModelId("polynomial-1"),
          new ModelId("polynomial-2"),
          new ModelId("polynomial-3"),
          new ModelId("power"),
          new ModelId("log-polynomial-2"),
          new ModelId("exponential"));

  /** Checks that the name is one of ours. */
  public ModelId {
    Objects.requireNonNull(name);
    if (!known(name)) {
      throw new IllegalArgumentException("name \"" + name + "\": not a model");
    }
  }

  private static boolean known(String name) {
    Matcher series = SERIES.matcher(name);
    if (series.matches()) {
      int degree = Integer.parseInt(series.group(2));
      boolean log = series.group(1).startsWith("log");
      return degree >= (log ? 2 : 1)
          && degree <= (log ? 3 : 10)
          && !series.group(2).startsWith("0");
    }
    return switch (name) {
      case "power", "exponential", "rational-1-1", "rational-2-2" -> true;
      default -> false;
    };
  }

  /**
   * Reads a model name.
   *
   * @param name the name
   * @return the model, or empty if there is none of that name
   */
  public static Optional<ModelId> parse(String name) {
    return name != null && known(name) ? Optional.of(new ModelId(name)) : Optional.empty();
  }

  /**
   * The names that {@link #parse} accepts, for messages.
   *
   * @return one phrase
   */
  public static String accepted() {
    return "polynomial-1 to polynomial-10, power, log-polynomial-2, log-polynomial-3, exponential,"
        + " rational-1-1 or rational-2-2";
  }

  /**
   * Number of parameters p.
   *
   * @return at least 2
   */
  public int parameterCount() {
    return switch (name) {
      case "power", "exponential" -> 2;
      case "rational-1-1" -> 3;
      case "rational-2-2" -> 5;
      default -> degree() + 1;
    };
  }

  private int degree() {
    Matcher series = SERIES.matcher(name);
    if (!series.matches()) {
      throw new IllegalStateException(name);
    }
    return Integer.parseInt(series.group(2));
  }

  /**
   * Fewest blocks on which a dossier may rest this model: ISO 6143 asks 3, 5, 7 for polynomials of
   * degree 1, 2, 3 and 5 for power and exponential functions (from memory), and never fewer than p
   * + 2 here.
   *
   * @return number of blocks
   */
  public int fewestBlocks() {
    int p = parameterCount();
    return switch (name) {
      case "power", "exponential", "log-polynomial-2" -> 5;
      case "log-polynomial-3" -> 7;
      case "rational-1-1", "rational-2-2" -> p + 3;
      default -> Math.max(p + 2, 2 * degree() + 1);
    };
  }

  /**
   * Whether the model takes the logarithm of the hardness or presumes it positive, which has no
   * meaning on an ordinal scale.
   *
   * @return true for power, exponential and log-polynomials
   */
  public boolean needsRatioScale() {
    return name.equals("power") || name.equals("exponential") || name.startsWith("log-");
  }

  /**
   * The model with its argument scaled for a set of responses.
   *
   * @param responses length n
   * @return a model ready to be fitted
   * @throws FitFailedException if the responses do not differ or lie outside the domain
   */
  public ResponseModel bind(double[] responses) throws FitFailedException {
    return restore(ArgumentScaling.of(responses, takesLogarithmOfResponse()));
  }

  /**
   * The model with a scaling that was kept.
   *
   * @param scaling from the fit that was kept
   * @return the same model as then
   */
  public ResponseModel restore(ArgumentScaling scaling) {
    return switch (name) {
      case "power" -> new SeriesModel(SeriesModel.Kind.POWER, 1, scaling);
      case "exponential" -> new SeriesModel(SeriesModel.Kind.EXPONENTIAL, 1, scaling);
      case "rational-1-1" -> new RationalModel(1, scaling);
      case "rational-2-2" -> new RationalModel(2, scaling);
      default ->
          new SeriesModel(
              name.startsWith("log-")
                  ? SeriesModel.Kind.LOG_POLYNOMIAL
                  : SeriesModel.Kind.POLYNOMIAL,
              degree(),
              scaling);
    };
  }

  private boolean takesLogarithmOfResponse() {
    return name.equals("power") || name.startsWith("log-");
  }

  @Override
  public String toString() {
    return name;
  }
}
