/**
 * The job: blocks and readings become block means, candidates, a chosen curve with its range, and
 * the check blocks' verdict, all of it one {@code Analysis}.
 *
 * <p>Judging the analysis is acceptance's task, keeping it the library's.
 */
package fettle.calibration;
