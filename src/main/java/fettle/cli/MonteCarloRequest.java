package fettle.cli;

import fettle.refusal.InputRefusedException;

/**
 * What {@code --monte-carlo} asks for.
 *
 * @param kind none, a fixed number of trials, or adaptive
 * @param trials number of trials where fixed
 */
record MonteCarloRequest(Kind kind, int trials) {
  enum Kind {
    NONE,
    FIXED,
    ADAPTIVE
  }

  private static final int FEWEST = 1000;
  private static final int MOST = 20_000_000;

  static MonteCarloRequest parse(String text) {
    if (text == null) {
      return new MonteCarloRequest(Kind.NONE, 0);
    }
    if (text.equals("adaptive")) {
      return new MonteCarloRequest(Kind.ADAPTIVE, 0);
    }
    try {
      int trials = Integer.parseInt(text);
      if (trials >= FEWEST && trials <= MOST) {
        return new MonteCarloRequest(Kind.FIXED, trials);
      }
    } catch (NumberFormatException notANumber) {
      // The refusal below says what was expected.
    }
    throw new InputRefusedException(
        "\"" + text + "\" is not a number of Monte Carlo trials.",
        "option --monte-carlo",
        "a whole number from " + FEWEST + " to " + MOST + ", or adaptive",
        "1000000 gives two significant digits of the uncertainty with room to spare");
  }
}
