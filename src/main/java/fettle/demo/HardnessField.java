package fettle.demo;

import java.util.ArrayList;
import java.util.List;

/**
 * How hardness varies over a face: a sum of plane waves of random direction, phase and wavelength,
 * less its mean over the grid, so that the block's hardness is the mean over its face.
 */
final class HardnessField {
  private static final int WAVES = 4;
  private static final double SHORTEST_MM = 25;
  private static final double LONGEST_MM = 90;

  private record Wave(double amplitude, double kx, double ky, double phase) {
    double at(Place place) {
      return amplitude * StrictMath.cos(kx * place.xMm() + ky * place.yMm() + phase);
    }
  }

  private final List<Wave> waves;
  private final double mean;

  private HardnessField(List<Wave> waves, double mean) {
    this.waves = waves;
    this.mean = mean;
  }

  /**
   * Draws a field.
   *
   * @param draws where chance comes from
   * @param standardDeviation relative standard deviation over a face much larger than the waves
   * @param face the face
   */
  static HardnessField drawn(NormalDraws draws, double standardDeviation, Face face) {
    // A wave of amplitude a has the mean square a²/2.
    double amplitude = standardDeviation * StrictMath.sqrt(2.0 / WAVES);
    List<Wave> waves = new ArrayList<>();
    for (int i = 0; i < WAVES; i++) {
      double number = 2 * StrictMath.PI / draws.uniform(SHORTEST_MM, LONGEST_MM);
      double direction = draws.uniform(0, StrictMath.PI);
      waves.add(
          new Wave(
              amplitude,
              number * StrictMath.cos(direction),
              number * StrictMath.sin(direction),
              draws.uniform(0, 2 * StrictMath.PI)));
    }
    List<Place> grid = face.grid();
    double sum = 0;
    for (Place place : grid) {
      sum += sum(waves, place);
    }
    return new HardnessField(List.copyOf(waves), sum / grid.size());
  }

  /** Relative departure of the local hardness from the block's. */
  double at(Place place) {
    return sum(waves, place) - mean;
  }

  private static double sum(List<Wave> waves, Place place) {
    double sum = 0;
    for (Wave wave : waves) {
      sum += wave.at(place);
    }
    return sum;
  }
}
