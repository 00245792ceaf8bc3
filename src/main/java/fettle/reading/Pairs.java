package fettle.reading;

import fettle.table.DecimalText;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * The points of a pairs file. Uncertainties of a kind are stated for all points or for none.
 *
 * @param file name of the file
 * @param points at least two, in the order of the file
 */
public record Pairs(String file, List<Pair> points) {
  /** Checks and copies. */
  public Pairs {
    Objects.requireNonNull(file);
    points = List.copyOf(points);
    if (points.size() < 2) {
      throw new IllegalArgumentException("points of " + file + ": at least two expected");
    }
    requireAllOrNone("hardnessUncertainty", points, Pair::hardnessUncertainty);
    requireAllOrNone("responseUncertainty", points, Pair::responseUncertainty);
  }

  private static void requireAllOrNone(
      String name, List<Pair> points, Function<Pair, Optional<DecimalText>> kind) {
    long stated = points.stream().filter(point -> kind.apply(point).isPresent()).count();
    if (stated != 0 && stated != points.size()) {
      throw new IllegalArgumentException(
          name
              + " stated for "
              + stated
              + " of "
              + points.size()
              + " points: all or none expected");
    }
  }

  /**
   * Whether the points carry uncertainties of hardness, so that the fit is weighted.
   *
   * @return false for ordinary least squares with the scale estimated
   */
  public boolean hasHardnessUncertainties() {
    return points.get(0).hardnessUncertainty().isPresent();
  }

  /**
   * Whether the points carry uncertainties of the response.
   *
   * @return true if they do, 0 among them
   */
  public boolean hasResponseUncertainties() {
    return points.get(0).responseUncertainty().isPresent();
  }
}
