package fettle.uncertainty;

/**
 * What Monte Carlo says of one output quantity (JCGM 101:2008, 7.5 to 7.7).
 *
 * @param mean average of the trials
 * @param standardUncertainty their standard deviation
 * @param low lower end of the probabilistically symmetric 95 % interval
 * @param high its upper end
 * @param shortestLow lower end of the shortest 95 % interval
 * @param shortestHigh its upper end
 */
public record MonteCarloOutput(
    double mean,
    double standardUncertainty,
    double low,
    double high,
    double shortestLow,
    double shortestHigh) {}
