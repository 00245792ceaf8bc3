package fettle.calibration;

import fettle.fit.ModelId;
import java.util.Optional;

/**
 * What the candidates' numbers recommend.
 *
 * @param model the model, empty where none qualifies
 * @param reason the reason in words with figures
 */
public record Recommendation(Optional<ModelId> model, String reason) {}
