/**
 * Refusals: the one way in which input is turned away.
 *
 * <p>A refusal says what is wrong, where it stands, what was expected and what to do next. Every
 * package may use it; it knows nothing of ours.
 */
package fettle.refusal;
