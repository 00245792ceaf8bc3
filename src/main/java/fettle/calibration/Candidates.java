package fettle.calibration;

import fettle.fit.CurveFit;
import fettle.fit.FitFailedException;
import fettle.fit.ModelId;
import fettle.fit.Points;
import fettle.fit.ResponseModel;
import fettle.uncertainty.BetweenBlockScatter;
import fettle.uncertainty.LeaveOneOut;
import fettle.uncertainty.PredictedBlock;
import fettle.uncertainty.ScatterScale;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Tries every candidate model and applies the order of refusal: not monotone → too few blocks → top
 * coefficient insignificant → neither χ² passes at τ = 0 nor τ within its limit.
 *
 * <p>The order and its thresholds are common practice in selecting calibration functions (ISO 6143
 * and ISO/TS 28038 ask for the least complex function that agrees with the data); AICc is C. M.
 * Hurvich, C.-L. Tsai, Biometrika 76 (1989) 297, with ln|V| because V depends on τ.
 */
final class Candidates {
  private static final double SMALLEST_T = 2;
  private static final double LEVEL = 0.05;

  private final Points points;
  private final ScatterScale scale;
  private final double largestScatter;

  /**
   * A search.
   *
   * @param points the fitting blocks
   * @param scale what τ is measured against
   * @param largestScatter largest τ that may stand, relative or in scale units
   */
  Candidates(Points points, ScatterScale scale, double largestScatter) {
    this.points = points;
    this.scale = scale;
    this.largestScatter = largestScatter;
  }

  List<Candidate> all() {
    List<Candidate> candidates = new ArrayList<>();
    for (ModelId model : ModelId.CANDIDATES) {
      if (scale == ScatterScale.RELATIVE || !model.needsRatioScale()) {
        candidates.add(of(model));
      }
    }
    return candidates;
  }

  Candidate of(ModelId id) {
    try {
      CandidateFit fit = fit(id);
      return new Candidate(id, Optional.of(fit), refusal(id, fit));
    } catch (FitFailedException failure) {
      return new Candidate(id, Optional.empty(), Optional.of("no fit: " + failure.getMessage()));
    }
  }

  private CandidateFit fit(ModelId id) throws FitFailedException {
    if (points.size() < id.parameterCount() + 2) {
      throw new FitFailedException(
          FitFailedException.Reason.TOO_FEW_POINTS,
          points.size() + " fitting blocks; " + id + " needs at least " + id.fewestBlocks());
    }
    ResponseModel model = id.bind(points.responses());
    BetweenBlockScatter scatter = BetweenBlockScatter.of(model, points, scale);
    CurveFit zero = scatter.atZero();
    List<PredictedBlock> predicted = LeaveOneOut.predict(model, points, scale);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    CurveFit chosen = scatter.atRestricted();
    for (double xi : chosen.adjustedResponses()) {
      low = Math.min(low, xi);
      high = Math.max(high, xi);
    }
    int p = id.parameterCount();
    double top = chosen.beta()[p - 1] / Math.sqrt(chosen.covariance()[p * p - 1]);
    int worst = 0;
    double gamma = 0;
    for (int i = 0; i < points.size(); i++) {
      double deviation = weightedDeviation(zero, i);
      if (deviation > gamma) {
        gamma = deviation;
        worst = i;
      }
    }
    double tail =
        ChiSquaredDistribution.of(zero.degreesOfFreedom()).survivalProbability(zero.chiSquared());
    return new CandidateFit(
        model,
        scatter,
        tail,
        gamma,
        worst,
        aicc(scatter, p),
        predicted,
        LeaveOneOut.rms(predicted),
        LeaveOneOut.standardErrorOfRms(predicted),
        model.monotonicity(chosen.beta(), low, high),
        top);
  }

  /** Larger of the deviations along hardness and along response over their own uncertainties. */
  private double weightedDeviation(CurveFit fit, int i) {
    double xi = fit.adjustedResponses()[i];
    double along = points.hardness(i) - fit.model().value(xi, fit.beta());
    double hardness = Math.abs(along) / Math.sqrt(points.totalHardnessVariance(i));
    double variance = points.totalResponseVariance(i);
    double response = variance > 0 ? Math.abs(points.response(i) - xi) / Math.sqrt(variance) : 0;
    return Math.max(hardness, response);
  }

  private OptionalDouble aicc(BetweenBlockScatter scatter, int p) {
    int k = p + 1;
    int m = points.size();
    if (m <= k + 1) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        -2 * scatter.maximumLogLikelihood() + 2.0 * k + 2.0 * k * (k + 1) / (m - k - 1));
  }

  private Optional<String> refusal(ModelId id, CandidateFit fit) {
    if (!fit.monotonicity().isProven()) {
      return Optional.of(
          "hardness is not strictly monotone in the response over the blocks' range");
    }
    if (points.size() < id.fewestBlocks()) {
      return Optional.of(points.size() + " fitting blocks; at least " + id.fewestBlocks());
    }
    if (Math.abs(fit.topT()) < SMALLEST_T) {
      return Optional.of(
          "its top coefficient is insignificant (|t| = " + number("%.2f", fit.topT()) + " < 2)");
    }
    double tau = fit.scatter().restricted();
    if (fit.upperTail() < LEVEL && tau > largestScatter) {
      return Optional.of(
          "χ² = "
              + number("%.3g", fit.scatter().atZero().chiSquared())
              + " is too large for the stated uncertainties (p = "
              + number("%.2g", fit.upperTail())
              + ") and the between-block scatter that would explain it, "
              + scatterText(tau)
              + ", exceeds its limit "
              + scatterText(largestScatter));
    }
    return Optional.empty();
  }

  private String scatterText(double tau) {
    return scale == ScatterScale.RELATIVE
        ? number("%.2f", 100 * tau) + " %"
        : number("%.2f", tau) + " HR";
  }

  private static String number(String format, double value) {
    return String.format(Locale.ROOT, format, Math.abs(value));
  }

  /**
   * The simplest qualifying model within 2 AICc units of the best and within one standard error of
   * the best leave-one-out error.
   */
  static Recommendation recommend(List<Candidate> candidates) {
    List<Candidate> qualified = new ArrayList<>();
    double bestAicc = Double.POSITIVE_INFINITY;
    CandidateFit bestError = null;
    for (Candidate candidate : candidates) {
      if (candidate.refusal().isPresent()) {
        continue;
      }
      qualified.add(candidate);
      CandidateFit fit = candidate.fit().orElseThrow();
      bestAicc = Math.min(bestAicc, fit.aicc().orElse(Double.POSITIVE_INFINITY));
      if (bestError == null || fit.leaveOneOutRms() < bestError.leaveOneOutRms()) {
        bestError = fit;
      }
    }
    if (qualified.isEmpty()) {
      return new Recommendation(Optional.empty(), noneReason(candidates));
    }
    double largestError = bestError.leaveOneOutRms() + bestError.leaveOneOutStandardError();
    Candidate choice = null;
    for (Candidate candidate : qualified) {
      CandidateFit fit = candidate.fit().orElseThrow();
      double aicc = fit.aicc().orElse(Double.POSITIVE_INFINITY);
      boolean close = Double.isInfinite(bestAicc) || aicc <= bestAicc + 2;
      if (close && fit.leaveOneOutRms() <= largestError && better(candidate, choice)) {
        choice = candidate;
      }
    }
    if (choice == null) {
      return new Recommendation(
          Optional.empty(),
          "None recommended: no model is at once within 2 AICc units of the best and within one"
              + " standard error of the smallest leave-one-out error. Look at the residuals and"
              + " choose with a written reason.");
    }
    return new Recommendation(
        Optional.of(choice.model()), reason(choice, qualified, bestAicc, largestError));
  }

  private static boolean better(Candidate candidate, Candidate than) {
    if (than == null) {
      return true;
    }
    int fewer = Integer.compare(candidate.model().parameterCount(), than.model().parameterCount());
    if (fewer != 0) {
      return fewer < 0;
    }
    CandidateFit a = candidate.fit().orElseThrow();
    CandidateFit b = than.fit().orElseThrow();
    return a.aicc().isPresent() && b.aicc().isPresent()
        ? a.aicc().getAsDouble() < b.aicc().getAsDouble()
        : a.leaveOneOutRms() < b.leaveOneOutRms();
  }

  private static String noneReason(List<Candidate> candidates) {
    return "None recommended: each of the "
        + candidates.size()
        + " candidates is refused, for the reason given beside it.";
  }

  private static String reason(
      Candidate choice, List<Candidate> qualified, double bestAicc, double largestError) {
    CandidateFit fit = choice.fit().orElseThrow();
    StringBuilder text = new StringBuilder();
    text.append(choice.model())
        .append(" (")
        .append(choice.model().parameterCount())
        .append(" parameters) is the simplest of ")
        .append(qualified.size())
        .append(qualified.size() == 1 ? " qualifying model" : " qualifying models")
        .append(" that predicts left-out blocks within one standard error of the best (")
        .append(number("%.3g", fit.leaveOneOutRms()))
        .append(" against a limit of ")
        .append(number("%.3g", largestError))
        .append(")");
    if (fit.aicc().isPresent()) {
      text.append(" and lies within 2 AICc units of the best (")
          .append(String.format(Locale.ROOT, "%.2f", fit.aicc().getAsDouble() - bestAicc))
          .append(" above it)");
    } else {
      text.append("; the blocks are too few for AICc");
    }
    return text.append('.').toString();
  }
}
