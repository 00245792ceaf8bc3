/**
 * The command line: turns options into jobs, results into text or JSON, refusals into exit codes.
 *
 * <p>The only package that prints and ends the program. It computes nothing and does not know the
 * window.
 */
package fettle.cli;
