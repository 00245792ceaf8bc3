package fettle.library;

/**
 * One input of a curve, by what it is and the SHA-256 of its bytes.
 *
 * @param kind readings, block, policy, dossier or exclusions
 * @param name file name or block id
 * @param sha256 64 hexadecimal digits in lower case
 */
public record InputFingerprint(String kind, String name, String sha256) {}
