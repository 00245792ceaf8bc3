package fettle.library;

/**
 * What a file holds from an event on.
 *
 * @param path path below the history's folder, with slashes
 * @param sha256 SHA-256 of its bytes
 */
record FileMark(String path, String sha256) {}
