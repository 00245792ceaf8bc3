package fettle.statistics;

/**
 * Factors of three-sigma control charts for subgroups, in their traditional names.
 *
 * <p>Computed by {@link SubgroupConstants#factors()}, or taken from a printed table.
 *
 * @param meanFromRange A2: half width of the chart of means in mean ranges
 * @param rangeLower D3: lower limit of the range in mean ranges
 * @param rangeUpper D4: upper limit of the range in mean ranges
 * @param meanFromScatter A3: half width of the chart of means in mean standard deviations
 * @param scatterLower B3: lower limit of s in mean standard deviations
 * @param scatterUpper B4: upper limit of s in mean standard deviations
 * @see "ISO 7870-2:2013, Table 2"
 */
public record ControlFactors(
    double meanFromRange,
    double rangeLower,
    double rangeUpper,
    double meanFromScatter,
    double scatterLower,
    double scatterUpper) {}
