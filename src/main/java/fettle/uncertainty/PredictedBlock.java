package fettle.uncertainty;

/**
 * One block predicted by the others.
 *
 * @param index index of the block among the points
 * @param predicted hardness that the curve of the others gives at its response
 * @param error predicted − hardness (deviation)
 * @param standardUncertainty of the error: curve of the others, the block's own response and
 *     certificate, between-block scatter estimated without it; errors that both share removed
 * @param z error over its standard uncertainty
 * @param extrapolated whether its response lies outside those of the others
 */
public record PredictedBlock(
    int index,
    double predicted,
    double error,
    double standardUncertainty,
    double z,
    boolean extrapolated) {}
