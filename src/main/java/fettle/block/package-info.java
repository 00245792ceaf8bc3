/**
 * Reference blocks: identity, material, geometry, certificates and their versions, use and expiry.
 *
 * <p>Reads the blocks CSV form. Does not know readings, curves or the folder they are kept in.
 */
package fettle.block;
