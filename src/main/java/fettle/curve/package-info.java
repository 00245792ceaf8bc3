/**
 * The curve itself: identity, parameters, range, evaluation with uncertainty and status.
 *
 * <p>Small enough to be taken out and used with the JDK alone: knows quantities, the model
 * functions of fit and the normal mixture of statistics, nothing else.
 */
package fettle.curve;
