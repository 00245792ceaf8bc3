package fettle.demo;

import java.util.Comparator;
import java.util.List;

/**
 * Random order of the blocks in a run, not allowed to follow the hardness: an order whose rank
 * correlation with the certified values reaches 0.6, in either direction, is drawn again.
 */
final class RandomOrder {
  private static final double LARGEST_CORRELATION = 0.6;

  private RandomOrder() {}

  /** Draws an order. */
  static List<SimulatedBlock> of(List<SimulatedBlock> blocks, NormalDraws draws) {
    List<SimulatedBlock> order = draws.shuffled(blocks);
    // Of the six orders of three blocks two are sorted and two nearly so: short runs take what
    // comes.
    while (blocks.size() > 3 && StrictMath.abs(correlation(order)) >= LARGEST_CORRELATION) {
      order = draws.shuffled(blocks);
    }
    return order;
  }

  /** Spearman's rank correlation between place in the order and certified value. */
  private static double correlation(List<SimulatedBlock> order) {
    List<SimulatedBlock> ranked =
        order.stream()
            .sorted(Comparator.comparingDouble(b -> b.block().certificates().get(0).certified()))
            .toList();
    double squares = 0;
    double n = order.size();
    for (int i = 0; i < order.size(); i++) {
      double difference = i - ranked.indexOf(order.get(i));
      squares += difference * difference;
    }
    return 1 - 6 * squares / (n * (n * n - 1));
  }
}
