package fettle.calibration;

import fettle.fit.ModelId;

/**
 * A person's choice of a model.
 *
 * @param model model
 * @param by person
 * @param reason reason in that person's words
 */
public record ModelChoice(ModelId model, String by, String reason) {
  /** Checks that a person and a reason are there. */
  public ModelChoice {
    if (by == null || by.isBlank() || reason == null || reason.isBlank()) {
      throw new IllegalArgumentException("choice of " + model + ": a person and a reason expected");
    }
  }
}
