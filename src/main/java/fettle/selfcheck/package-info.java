/**
 * Published cases recomputed on the user's machine: what the numbers are worth there. Knows the
 * numeric packages alone; the cases and their printed values are resources beside it.
 */
package fettle.selfcheck;
