package fettle.curve;

import fettle.fit.ArgumentScaling;
import fettle.fit.ModelId;
import fettle.fit.ResponseModel;
import java.util.List;

/**
 * A calibration curve: the measurement function, all that its uncertainty needs, and its range.
 *
 * @param identity what it is for
 * @param model model
 * @param argument scaling of the model's argument
 * @param beta parameters, length p
 * @param covariance covariance of beta at the estimated between-block scatter, run effects
 *     included, p × p row-major
 * @param scatterRelative whether between-block scatter is a fraction of the hardness
 * @param tau estimated between-block standard uncertainty
 * @param nodes posterior of the between-block scatter
 * @param sharedSources sources shared with other results
 * @param runs run effects
 * @param scatter scatter of readings and other influences on the response
 * @param parts the covariance split by independent source
 * @param simultaneousFactor widening of a pointwise interval to one that holds over the whole range
 *     at once (Scheffé)
 * @param range where the curve is valid
 */
public record Curve(
    CurveIdentity identity,
    ModelId model,
    ArgumentScaling argument,
    double[] beta,
    double[] covariance,
    boolean scatterRelative,
    double tau,
    List<PosteriorNode> nodes,
    List<SharedSource> sharedSources,
    RunEffects runs,
    ResponseScatter scatter,
    List<CovariancePart> parts,
    double simultaneousFactor,
    ValidRange range) {
  /** Checks shapes and copies lists. */
  public Curve {
    int p = model.parameterCount();
    if (beta.length != p || covariance.length != p * p) {
      throw new IllegalArgumentException(
          beta.length
              + " parameters, "
              + covariance.length
              + " covariances: "
              + p
              + " and "
              + p * p
              + " expected of "
              + model);
    }
    nodes = List.copyOf(nodes);
    sharedSources = List.copyOf(sharedSources);
    parts = List.copyOf(parts);
    if (nodes.isEmpty()) {
      throw new IllegalArgumentException("nodes: at least one expected");
    }
  }

  /**
   * The measurement function.
   *
   * @return the model with its scaling
   */
  public ResponseModel function() {
    return model.restore(argument);
  }

  /**
   * An evaluator with its own working storage, for one thread.
   *
   * @return a new one
   */
  public CurveEvaluator evaluator() {
    return new CurveEvaluator(this);
  }

  /**
   * The same curve with another range.
   *
   * @param newRange range
   * @return a copy
   */
  public Curve withRange(ValidRange newRange) {
    return new Curve(
        identity,
        model,
        argument,
        beta,
        covariance,
        scatterRelative,
        tau,
        nodes,
        sharedSources,
        runs,
        scatter,
        parts,
        simultaneousFactor,
        newRange);
  }
}
