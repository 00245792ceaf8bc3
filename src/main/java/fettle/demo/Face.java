package fettle.demo;

import java.util.ArrayList;
import java.util.List;

/**
 * The test face of a block and the grid of places on it.
 *
 * <p>A place is used once: the grid's pitch less the jitter keeps the usual spacing rules (Vickers
 * 3 d between centres, with d at most 0.4 mm here; rebound 3 mm between edges of impressions of at
 * most 0.9 mm; both from memory), and the margin keeps clear of the edge.
 *
 * @param sizeMm side of the square, or diameter of the disc, in mm
 * @param round whether it is a disc
 * @param pitchMm pitch of the grid in mm
 * @param marginMm least distance of a grid point from the edge in mm
 * @param jitterMm largest departure of a reading from its grid point, in each direction, in mm
 */
record Face(double sizeMm, boolean round, double pitchMm, double marginMm, double jitterMm) {
  /** Square blocks of 36 cm² for UCI. */
  static final Face SQUARE_60 = new Face(60, false, 3, 6, 0.4);

  /** Discs for rebound. */
  static final Face DISC_120 = new Face(120, true, 6, 12, 0.5);

  /** The grid, row by row. */
  List<Place> grid() {
    List<Place> grid = new ArrayList<>();
    int half = (int) ((sizeMm / 2 - marginMm) / pitchMm);
    for (int row = -half; row <= half; row++) {
      for (int column = -half; column <= half; column++) {
        double x = column * pitchMm;
        double y = row * pitchMm;
        if (!round || x * x + y * y <= (sizeMm / 2 - marginMm) * (sizeMm / 2 - marginMm)) {
          grid.add(new Place(sizeMm / 2 + x, sizeMm / 2 + y));
        }
      }
    }
    return grid;
  }

  /** Area of the face in cm². */
  double areaCm2() {
    double square = sizeMm * sizeMm / 100;
    return round ? square * StrictMath.PI / 4 : square;
  }
}
