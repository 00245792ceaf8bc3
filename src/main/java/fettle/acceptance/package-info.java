/**
 * Acceptance checks: each asks one question of an analysis and answers in one sentence with
 * figures.
 *
 * <p>Knows calibration and below. A check whose data are missing says so; it never passes silently.
 */
package fettle.acceptance;
