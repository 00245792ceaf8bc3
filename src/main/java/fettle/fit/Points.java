package fettle.fit;

import fettle.fit.FitFailedException.Reason;
import java.math.BigDecimal;
import java.util.Arrays;

/**
 * Points uncertain in both coordinates, with errors that several points share.
 *
 * <pre>
 *   V_r = diag(responseVariance) + Σ_k z_k z_kᵀ      rows z_k of responseEffects
 *   V_h = diag(hardnessVariance) + Σ_s c_s c_sᵀ      rows c_s of hardnessEffects
 * </pre>
 *
 * <p><b>Shapes:</b> all vectors have length m; each effect is a vector of length m holding what one
 * standard uncertainty of the shared cause does to every point. <b>Units:</b> variances in squared
 * units, effects in the unit of their coordinate. Arrays are copied. Where all variances are 0 and
 * there are no effects the points carry no uncertainty and are fitted by ordinary least squares.
 */
public final class Points {
  /** Independent parts below this share of the whole variance are set to it: V must invert. */
  private static final double SMALLEST_INDEPENDENT_SHARE = 1e-14;

  private static final double LARGEST = 1e150;

  private final double[] response;
  private final double[] hardness;
  private final double[] responseVariance;
  private final double[] hardnessVariance;
  private final double[][] responseEffects;
  private final double[][] hardnessEffects;
  private final BigDecimal[] exactResponse;
  private final BigDecimal[] exactHardness;

  private Points(
      double[] response,
      double[] hardness,
      double[] responseVariance,
      double[] hardnessVariance,
      double[][] responseEffects,
      double[][] hardnessEffects,
      BigDecimal[] exactResponse,
      BigDecimal[] exactHardness) {
    this.response = response;
    this.hardness = hardness;
    this.responseVariance = responseVariance;
    this.hardnessVariance = hardnessVariance;
    this.responseEffects = responseEffects;
    this.hardnessEffects = hardnessEffects;
    this.exactResponse = exactResponse;
    this.exactHardness = exactHardness;
  }

  /**
   * Points without stated uncertainties.
   *
   * @param response length m, finite
   * @param hardness length m, finite
   * @return points for ordinary least squares
   * @throws FitFailedException if a value is not finite
   */
  public static Points plain(double[] response, double[] hardness) throws FitFailedException {
    int m = response.length;
    return of(response, hardness, new double[m], new double[m], new double[0][], new double[0][]);
  }

  /**
   * Points with uncertainties.
   *
   * @param response length m, finite
   * @param hardness length m, finite
   * @param responseVariance independent variances of the responses, length m, 0 or above
   * @param hardnessVariance independent variances of the hardnesses, length m; above 0 unless all
   *     uncertainties are 0
   * @param responseEffects shared effects on the responses, each of length m
   * @param hardnessEffects shared effects on the hardnesses, each of length m
   * @return the points
   * @throws FitFailedException if a value is not finite, a variance negative, or a hardness has no
   *     uncertainty while others have
   */
  public static Points of(
      double[] response,
      double[] hardness,
      double[] responseVariance,
      double[] hardnessVariance,
      double[][] responseEffects,
      double[][] hardnessEffects)
      throws FitFailedException {
    int m = response.length;
    if (hardness.length != m || responseVariance.length != m || hardnessVariance.length != m) {
      throw new IllegalArgumentException(
          "lengths "
              + m
              + ", "
              + hardness.length
              + ", "
              + responseVariance.length
              + ", "
              + hardnessVariance.length
              + ": equal lengths expected");
    }
    double[] independent = hardnessVariance.clone();
    boolean uncertain = responseEffects.length + hardnessEffects.length > 0;
    for (int i = 0; i < m; i++) {
      requireFinite("response", i, response[i]);
      requireFinite("hardness", i, hardness[i]);
      requireVariance("response", i, responseVariance[i]);
      requireVariance("hardness", i, independent[i]);
      uncertain |= responseVariance[i] > 0 || independent[i] > 0;
    }
    requireEffects(responseEffects, m);
    requireEffects(hardnessEffects, m);
    if (uncertain) {
      for (int i = 0; i < m; i++) {
        double shared = 0;
        for (double[] effect : hardnessEffects) {
          shared += effect[i] * effect[i];
        }
        if (!(independent[i] + shared > 0)) {
          throw new FitFailedException(
              Reason.BAD_UNCERTAINTY,
              "point "
                  + (i + 1)
                  + " (hardness "
                  + hardness[i]
                  + ") has no hardness uncertainty while others have one; it would be taken as exact");
        }
        independent[i] = Math.max(independent[i], SMALLEST_INDEPENDENT_SHARE * shared);
      }
    }
    return new Points(
        response.clone(),
        hardness.clone(),
        responseVariance.clone(),
        independent,
        copy(responseEffects),
        copy(hardnessEffects),
        null,
        null);
  }

  private static double[][] copy(double[][] effects) {
    double[][] copies = new double[effects.length][];
    Arrays.setAll(copies, k -> effects[k].clone());
    return copies;
  }

  private static void requireFinite(String name, int i, double value) throws FitFailedException {
    if (!Double.isFinite(value)) {
      throw new FitFailedException(
          Reason.NOT_FINITE,
          name + " of point " + (i + 1) + " is " + value + ", not a number to fit");
    }
    if (Math.abs(value) > LARGEST) {
      throw new FitFailedException(
          Reason.NOT_FINITE,
          name
              + " of point "
              + (i + 1)
              + " is "
              + value
              + ", beyond "
              + LARGEST
              + ", where squares leave the range of numbers");
    }
  }

  private static void requireVariance(String name, int i, double value) throws FitFailedException {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new FitFailedException(
          Reason.BAD_UNCERTAINTY,
          "the "
              + name
              + " variance of point "
              + (i + 1)
              + " is "
              + value
              + "; a finite value of 0 or above is needed");
    }
  }

  private static void requireEffects(double[][] effects, int m) throws FitFailedException {
    for (double[] effect : effects) {
      if (effect.length != m) {
        throw new IllegalArgumentException(
            "effect of length " + effect.length + ": " + m + " expected");
      }
      for (int i = 0; i < m; i++) {
        requireFinite("shared effect", i, effect[i]);
      }
    }
  }

  /**
   * The same points with the decimals they were printed with, so that a fit which keeps more than
   * double precision starts from the printed value and not from its nearest double.
   *
   * @param responses length m, each nearest to the response in double precision
   * @param hardnesses length m, likewise
   * @return points with exact decimals
   */
  public Points withDecimals(BigDecimal[] responses, BigDecimal[] hardnesses) {
    for (int i = 0; i < response.length; i++) {
      if (responses[i].doubleValue() != response[i] || hardnesses[i].doubleValue() != hardness[i]) {
        throw new IllegalArgumentException(
            "point "
                + (i + 1)
                + ": decimals "
                + responses[i]
                + ", "
                + hardnesses[i]
                + " do not round to "
                + response[i]
                + ", "
                + hardness[i]);
      }
    }
    return new Points(
        response,
        hardness,
        responseVariance,
        hardnessVariance,
        responseEffects,
        hardnessEffects,
        responses.clone(),
        hardnesses.clone());
  }

  /**
   * The same points with other independent hardness variances.
   *
   * @param variances length m, above 0
   * @return points that share everything else
   */
  public Points withHardnessVariance(double[] variances) {
    if (variances.length != response.length) {
      throw new IllegalArgumentException(
          "variances of length " + variances.length + ": " + response.length + " expected");
    }
    return new Points(
        response,
        hardness,
        responseVariance,
        variances.clone(),
        responseEffects,
        hardnessEffects,
        exactResponse,
        exactHardness);
  }

  /**
   * All points but one.
   *
   * @param left index of the point left out
   * @return m − 1 points
   */
  public Points without(int left) {
    double[][] responseShared = new double[responseEffects.length][];
    Arrays.setAll(responseShared, k -> drop(responseEffects[k], left));
    double[][] hardnessShared = new double[hardnessEffects.length][];
    Arrays.setAll(hardnessShared, k -> drop(hardnessEffects[k], left));
    return new Points(
        drop(response, left),
        drop(hardness, left),
        drop(responseVariance, left),
        drop(hardnessVariance, left),
        responseShared,
        hardnessShared,
        null,
        null);
  }

  private static double[] drop(double[] values, int left) {
    double[] rest = new double[values.length - 1];
    System.arraycopy(values, 0, rest, 0, left);
    System.arraycopy(values, left + 1, rest, left, rest.length - left);
    return rest;
  }

  /**
   * Number of points m.
   *
   * @return at least 0
   */
  public int size() {
    return response.length;
  }

  /**
   * Whether any uncertainty was stated.
   *
   * @return false for ordinary least squares
   */
  public boolean hasUncertainties() {
    for (double variance : hardnessVariance) {
      if (variance > 0) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether any response is uncertain.
   *
   * @return true where V_r is not 0
   */
  public boolean hasUncertainResponses() {
    if (responseEffects.length > 0) {
      return true;
    }
    for (double variance : responseVariance) {
      if (variance > 0) {
        return true;
      }
    }
    return false;
  }

  /**
   * Response of a point.
   *
   * @param i index
   * @return in the response unit
   */
  public double response(int i) {
    return response[i];
  }

  /**
   * Hardness of a point.
   *
   * @param i index
   * @return in the scale's unit
   */
  public double hardness(int i) {
    return hardness[i];
  }

  /**
   * Responses.
   *
   * @return a copy, length m
   */
  public double[] responses() {
    return response.clone();
  }

  /**
   * Hardnesses.
   *
   * @return a copy, length m
   */
  public double[] hardnesses() {
    return hardness.clone();
  }

  /**
   * Independent hardness variances.
   *
   * @return a copy, length m
   */
  public double[] hardnessVariances() {
    return hardnessVariance.clone();
  }

  /**
   * Independent response variances.
   *
   * @return a copy, length m
   */
  public double[] responseVariances() {
    return responseVariance.clone();
  }

  /**
   * One shared hardness effect.
   *
   * @param k index
   * @return a copy, length m: what one standard uncertainty of the cause does to every hardness
   */
  public double[] hardnessEffect(int k) {
    return hardnessEffects[k].clone();
  }

  /**
   * One shared response effect.
   *
   * @param k index
   * @return a copy, length m: what one standard uncertainty of the cause does to every response
   */
  public double[] responseEffect(int k) {
    return responseEffects[k].clone();
  }

  /**
   * Number of shared hardness effects.
   *
   * @return 0 or more
   */
  public int hardnessEffectCount() {
    return hardnessEffects.length;
  }

  /**
   * Number of shared response effects.
   *
   * @return 0 or more
   */
  public int responseEffectCount() {
    return responseEffects.length;
  }

  /**
   * Whole hardness variance of one point, shared parts included.
   *
   * @param i index
   * @return in the squared unit of the scale
   */
  public double totalHardnessVariance(int i) {
    double sum = hardnessVariance[i];
    for (double[] effect : hardnessEffects) {
      sum += effect[i] * effect[i];
    }
    return sum;
  }

  /**
   * Whole response variance of one point, shared parts included.
   *
   * @param i index
   * @return in the squared response unit
   */
  public double totalResponseVariance(int i) {
    double sum = responseVariance[i];
    for (double[] effect : responseEffects) {
      sum += effect[i] * effect[i];
    }
    return sum;
  }

  double responseVariance(int i) {
    return responseVariance[i];
  }

  double hardnessVariance(int i) {
    return hardnessVariance[i];
  }

  double responseEffect(int k, int i) {
    return responseEffects[k][i];
  }

  double hardnessEffect(int k, int i) {
    return hardnessEffects[k][i];
  }

  BigDecimal exactResponse(int i) {
    return exactResponse == null ? new BigDecimal(response[i]) : exactResponse[i];
  }

  BigDecimal exactHardness(int i) {
    return exactHardness == null ? new BigDecimal(hardness[i]) : exactHardness[i];
  }
}
