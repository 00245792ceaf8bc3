package fettle.curve;

/**
 * A source of error that the curve shares with other results: a bench machine behind several
 * certificates.
 *
 * @param name its name as on the certificates
 * @param deltaBeta what one standard uncertainty of it does to the parameters, length p; part of
 *     the covariance already, never added again
 */
public record SharedSource(String name, double[] deltaBeta) {}
