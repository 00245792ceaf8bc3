/**
 * Quantities of the trade: hardness scales, response kinds, values with their uncertainty.
 *
 * <p>Knows nothing of ours but refusals. Numbers carry their scale or unit by type or by name.
 */
package fettle.quantity;
