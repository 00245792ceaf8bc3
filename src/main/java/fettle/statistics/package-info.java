/**
 * Statistical tests, variance components, critical values and run lengths: numbers in, numbers out.
 *
 * <p>Knows nothing of ours: no blocks, no readings, no curves.
 */
package fettle.statistics;
