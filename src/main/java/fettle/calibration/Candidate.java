package fettle.calibration;

import fettle.fit.ModelId;
import java.util.Optional;

/**
 * One model that was tried.
 *
 * @param model the model
 * @param fit its fit, where there is one
 * @param refusal why it may not be recommended: no fit at all, or the first ground in the order of
 *     refusal; empty for a model that qualifies
 */
public record Candidate(ModelId model, Optional<CandidateFit> fit, Optional<String> refusal) {}
