/**
 * Uncertainty of a fitted curve: between-block scatter and its marginal, blocks predicted by the
 * others, Monte Carlo, budgets. Numbers in, numbers out; knows fit and statistics.
 */
package fettle.uncertainty;
