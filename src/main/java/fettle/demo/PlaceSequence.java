package fettle.demo;

import java.util.Iterator;

/** The places of a face in the order in which they are used, each once over the block's life. */
final class PlaceSequence {
  private final String block;
  private final Face face;
  private final NormalDraws draws;
  private final Iterator<Place> rest;

  PlaceSequence(long seed, SimulatedBlock block) {
    this.block = block.block().id();
    this.face = block.face();
    this.draws = NormalDraws.of(seed, "places/" + this.block);
    this.rest = draws.shuffled(face.grid()).iterator();
  }

  /** The next free place, to 0.1 mm. */
  Place next() {
    if (!rest.hasNext()) {
      throw new IllegalStateException("block " + block + ": the face is full");
    }
    Place grid = rest.next();
    double jitter = face.jitterMm();
    return new Place(
        Rounding.to(0.1, grid.xMm() + draws.uniform(-jitter, jitter)),
        Rounding.to(0.1, grid.yMm() + draws.uniform(-jitter, jitter)));
  }
}
