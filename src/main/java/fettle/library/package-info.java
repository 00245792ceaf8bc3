/**
 * The laboratory folder on disk: reference blocks, dossiers, readings, drafts and their histories.
 *
 * <p>The only package that writes there. Every file is complete or not there; every event is a line
 * of a history whose lines are chained by their hashes.
 */
package fettle.library;
