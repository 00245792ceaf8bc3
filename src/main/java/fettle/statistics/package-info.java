/**
 * Statistical methods: outlier and homogeneity tests, summary statistics, variance components,
 * regression diagnostics, equivalence, control charts and run lengths. Numbers in, numbers out.
 *
 * <p>One class per method, each citing its source. It knows nothing of blocks, readings, curves or
 * files, and changes no array it is given. A wrong argument is an {@link IllegalArgumentException}
 * that names argument, place and value. No test here removes a value: a test says what it saw.
 */
package fettle.statistics;
