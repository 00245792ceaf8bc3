/**
 * Response models and the errors-in-variables solver: numbers in, numbers out.
 *
 * <p>A model gives hardness from response; the solver estimates its parameters from points that are
 * uncertain in both coordinates and partly share their errors. Knows statistics and refusals at
 * most; knows no blocks, readings, files or scales.
 */
package fettle.fit;
