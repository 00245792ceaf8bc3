package fettle.library;

/**
 * One input of a curve, by what it is and its hash.
 *
 * @param kind {@code readings}, {@code block-certificate}, {@code policy}, {@code roles} or {@code
 *     exclusions}
 * @param name file name or block mark; the kind itself where there is but one
 * @param sha256 SHA-256 of the file's bytes, or of the value's canonical form (RFC 8785)
 */
public record InputFingerprint(String kind, String name, String sha256) {}
