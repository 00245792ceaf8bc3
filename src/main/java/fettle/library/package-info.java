/**
 * The laboratory folder on disk: reference blocks, dossiers with their readings and drafts, and the
 * history that each change is written to first.
 *
 * <p>The only package that writes there. Every change is one event of a hash-chained history; the
 * files beside it carry what the event says, and a crash at any instant leaves the old state or the
 * new one.
 */
package fettle.library;
