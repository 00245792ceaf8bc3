package fettle.calibration;

import fettle.block.BlockRole;
import fettle.curve.Curve;
import fettle.fit.FitFailedException;
import fettle.fit.ModelId;
import fettle.policy.Policy;
import fettle.refusal.InputRefusedException;
import fettle.uncertainty.MonotoneShare;
import fettle.uncertainty.ScatterScale;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The job from blocks and readings to a curve: block means with their covariance, all candidates,
 * the recommendation or a person's choice, the curve with range, the check blocks.
 *
 * <p>Deterministic: the same campaign and choice give the same bits.
 */
public final class Calibration {
  /** Largest between-block scatter that may stand unexplained, relative (common practice). */
  private static final double LARGEST_RELATIVE_SCATTER = 0.03;

  /** The same in HR units (common practice). */
  private static final double LARGEST_ABSOLUTE_SCATTER = 1.0;

  /** Id of the check whose limit the policy may set for it. */
  private static final String SCATTER_LIMIT = "between-block-scatter";

  private static final int DRAWS = 2000;

  /** Fixed, so that a fit repeats itself to the bit; the share is a diagnosis, not a result. */
  private static final long SEED = 20_260_101L;

  private Calibration() {}

  /**
   * Analyses a campaign.
   *
   * @param campaign all that the fit rests on
   * @param choice a person's choice of model, empty to follow the recommendation
   * @return the analysis
   * @throws InputRefusedException if there are no fitting blocks with readings, repeatability
   *     cannot be estimated, or the chosen model cannot be fitted or is not monotone
   */
  public static Analysis analyse(Campaign campaign, Optional<ModelChoice> choice) {
    String dossier = campaign.dossier().identity().dossier();
    Policy policy = campaign.dossier().policy();
    List<BlockResponse> blocks = BlockResponses.of(campaign);
    List<BlockResponse> fitting =
        blocks.stream().filter(block -> block.role() == BlockRole.FIT).toList();
    if (fitting.size() < 3) {
      throw new InputRefusedException(
          "Dossier "
              + dossier
              + " has readings on "
              + fitting.size()
              + (fitting.size() == 1 ? " fitting block." : " fitting blocks."),
          "dossier " + dossier,
          "at least 4 fitting blocks for a straight line, 5 for a power law; 6 to 8 are usual",
          "add blocks with role fit and readings on them");
    }
    ResponseVariance variance =
        ResponseVariances.of(fitting, policy.typeB(), policy.responseResolution().orElse(0));
    CampaignPoints points;
    try {
      points = CampaignPoints.of(fitting, variance, policy.typeB(), dossier);
    } catch (FitFailedException failure) {
      throw new InputRefusedException(
          "The blocks and readings cannot be fitted: " + failure.getMessage() + ".",
          "dossier " + dossier,
          "finite values with an uncertainty for every block",
          "correct the certificates or readings named");
    }
    boolean ordinal = campaign.dossier().identity().scale().isOrdinal();
    ScatterScale scale = ordinal ? ScatterScale.ABSOLUTE : ScatterScale.RELATIVE;
    double largest =
        policy.limitFor(
            SCATTER_LIMIT, ordinal ? LARGEST_ABSOLUTE_SCATTER : LARGEST_RELATIVE_SCATTER);
    Candidates search = new Candidates(points.points(), scale, largest);
    List<Candidate> candidates = new ArrayList<>(search.all());
    Recommendation recommendation = Candidates.recommend(candidates);
    Optional<ModelId> model = choice.map(ModelChoice::model).or(recommendation::model);
    Optional<ChosenCurve> chosen = Optional.empty();
    if (model.isPresent()) {
      Candidate candidate = find(candidates, search, model.get());
      chosen = Optional.of(chosen(campaign, blocks, points, candidate, choice));
    }
    return new Analysis(
        campaign, blocks, variance, points.points(), candidates, recommendation, chosen);
  }

  private static Candidate find(List<Candidate> candidates, Candidates search, ModelId model) {
    for (Candidate candidate : candidates) {
      if (candidate.model().equals(model)) {
        return candidate;
      }
    }
    Candidate named = search.of(model);
    candidates.add(named);
    return named;
  }

  private static ChosenCurve chosen(
      Campaign campaign,
      List<BlockResponse> blocks,
      CampaignPoints points,
      Candidate candidate,
      Optional<ModelChoice> choice) {
    String where = "dossier " + campaign.dossier().identity().dossier();
    if (candidate.fit().isEmpty()) {
      throw new InputRefusedException(
          "Model " + candidate.model() + " cannot be used: " + candidate.refusal().orElse("") + ".",
          where,
          "a model that these blocks determine",
          "choose another model, or read more blocks");
    }
    CandidateFit fit = candidate.fit().get();
    if (!fit.monotonicity().isProven()) {
      throw new InputRefusedException(
          "Model " + candidate.model() + " is not strictly monotone over the blocks' range.",
          where,
          "a curve that gives one hardness for one response",
          "choose a model with fewer parameters, or look for a wrong block or reading");
    }
    Policy policy = campaign.dossier().policy();
    try {
      Curve whole = new CurveAssembly(points, fit, policy).assemble(campaign.dossier().identity());
      Curve curve = whole.withRange(RangeTrim.of(whole, policy));
      List<BlockResponse> checks =
          blocks.stream().filter(block -> block.role() == BlockRole.CHECK).toList();
      return new ChosenCurve(
          fit,
          choice,
          curve,
          new CheckBlocks(curve, points, policy).judge(checks),
          MonotoneShare.of(
              fit.scatter().nodes(),
              curve.range().responseLow(),
              curve.range().responseHigh(),
              DRAWS,
              SEED));
    } catch (FitFailedException failure) {
      throw new InputRefusedException(
          "Model " + candidate.model() + " cannot be used: " + failure.getMessage() + ".",
          where,
          "a model that these blocks determine",
          "choose another model, or read more blocks");
    }
  }
}
