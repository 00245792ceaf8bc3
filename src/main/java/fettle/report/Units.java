package fettle.report;

import fettle.curve.CurveIdentity;
import fettle.quantity.ResponseKind;

/**
 * The units of one dossier as its report writes them.
 *
 * @param hardness the scale's symbol, with a space that does not break
 * @param response unit of the response with a space before it, empty for dimension one
 * @param ordinal whether percentages of the hardness have no meaning
 */
record Units(String hardness, String response, boolean ordinal) {
  static Units of(CurveIdentity identity) {
    ResponseKind kind = identity.responseKind();
    return new Units(
        identity.scale().symbol().replace(" ", Figures.NBSP),
        kind.unit().equals("1") ? "" : Figures.NBSP + kind.unit(),
        identity.scale().isOrdinal());
  }

  /** A text in front of the scale's symbol. */
  String ofHardness(String figure) {
    return figure + Figures.NBSP + hardness;
  }

  /** A text in front of the response's unit. */
  String ofResponse(String figure) {
    return figure + response;
  }

  /** Heading of a column of responses. */
  String responseHeading(String name) {
    return response.isEmpty() ? name : name + Figures.NBSP + "/" + response;
  }

  /** Heading of a column of hardnesses. */
  String hardnessHeading(String name) {
    return name + Figures.NBSP + "/" + Figures.NBSP + hardness;
  }

  /** A standard deviation that is a fraction or an amount of the response. */
  String spreadOfResponse(double deviation, boolean relative) {
    return relative
        ? Figures.percent(deviation) + Figures.NBSP + "% of the response"
        : ofResponse(Figures.significant(deviation, 2));
  }

  /** Between-block scatter, a fraction of the hardness or an amount. */
  String scatter(double tau, boolean relative) {
    return relative
        ? Figures.percent(tau) + Figures.NBSP + "%"
        : ofHardness(Figures.significant(tau, 2));
  }
}
