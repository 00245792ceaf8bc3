package fettle.table;

import fettle.refusal.InputRefusedException;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Collects what is wrong with the rows of one file, to be told at once: the problem of the first
 * line in full, then the lines of the others. Stops being interested after 20 lines.
 */
public final class RowProblems {
  private static final int KEPT = 20;

  private final TreeMap<Integer, InputRefusedException> byLine = new TreeMap<>();

  /**
   * Keeps a problem; of several on one line the first.
   *
   * @param line line of the row
   * @param problem what is wrong
   */
  public void add(int line, InputRefusedException problem) {
    if (!isFull()) {
      byLine.putIfAbsent(line, problem);
    }
  }

  /**
   * Whether looking further is not worth while.
   *
   * @return true after 20 lines
   */
  public boolean isFull() {
    return byLine.size() == KEPT;
  }

  /**
   * The one refusal for all.
   *
   * @return empty if nothing was added
   */
  public Optional<InputRefusedException> refusal() {
    if (byLine.isEmpty()) {
      return Optional.empty();
    }
    InputRefusedException first = byLine.firstEntry().getValue();
    if (byLine.size() == 1) {
      return Optional.of(first);
    }
    return Optional.of(
        new InputRefusedException(
            first.what(), first.where() + "; " + others(), first.expected(), first.action()));
  }

  /**
   * Throws the one refusal, if there is any.
   *
   * @throws InputRefusedException if anything was added
   */
  public void refuseIfAny() {
    refusal()
        .ifPresent(
            refusal -> {
              throw refusal;
            });
  }

  private String others() {
    StringBuilder lines = new StringBuilder();
    for (int line : byLine.tailMap(byLine.firstKey(), false).keySet()) {
      lines.append(lines.length() == 0 ? "" : ", ").append(line);
    }
    int more = byLine.size() - 1;
    return "and "
        + (isFull() ? "at least " : "")
        + more
        + (more == 1 ? " more row with a problem: line " : " more rows with problems: lines ")
        + lines
        + (isFull() ? " …" : "");
  }
}
