package fettle.curve;

/**
 * Where the curve is valid; outside there is no number.
 *
 * @param responseLow lowest response
 * @param responseHigh highest response
 * @param hardnessLow lowest hardness
 * @param hardnessHigh highest hardness
 * @param lowLimitedBy what set the limit at the low response
 * @param highLimitedBy what set the limit at the high response
 */
public record ValidRange(
    double responseLow,
    double responseHigh,
    double hardnessLow,
    double hardnessHigh,
    String lowLimitedBy,
    String highLimitedBy) {

  /**
   * Where a response lies.
   *
   * @param response in the response unit
   * @return the status
   */
  public Status statusOf(double response) {
    if (!Double.isFinite(response)) {
      return Status.NOT_A_NUMBER;
    }
    if (response < responseLow) {
      return Status.BELOW_RANGE;
    }
    return response > responseHigh ? Status.ABOVE_RANGE : Status.IN_RANGE;
  }
}
