package fettle.block;

import fettle.refusal.InputRefusedException;

/** What a block is for in a dossier. */
public enum BlockRole {
  /** Its readings and certified hardness shape the curve. */
  FIT("fit"),
  /** Kept out of fitting; proves the curve. */
  CHECK("check"),
  /** Steel block for the probe's own verification. */
  STANDARD("standard"),
  /** Bracketing block, read at start, middle and end of a session. */
  DRIFT("drift");

  private final String id;

  BlockRole(String id) {
    this.id = id;
  }

  /**
   * The word in files.
   *
   * @return in lower case
   */
  public String id() {
    return id;
  }

  /**
   * Reads a role.
   *
   * @param text the word
   * @param where where it stands
   * @return the role
   * @throws InputRefusedException if it is none of the four
   */
  public static BlockRole parse(String text, String where) {
    for (BlockRole role : values()) {
      if (role.id.equalsIgnoreCase(text == null ? "" : text.strip())) {
        return role;
      }
    }
    throw new InputRefusedException(
        "\"" + text + "\" is not a block role.",
        where,
        "fit, check, standard or drift",
        "say what the block is for, or leave the cell empty for fit");
  }
}
