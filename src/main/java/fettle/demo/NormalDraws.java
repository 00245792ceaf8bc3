package fettle.demo;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Normal and uniform draws of one named purpose under one seed.
 *
 * <p>The generator is xoshiro256++ of Commons RNG; its 256-bit state is the SHA-256 hash of the
 * seed and the purpose, so that each purpose has its own sequence and a new purpose changes no
 * other. Normal deviates come from the polar method with StrictMath, so that the bits are the same
 * on every platform. Not safe for several threads.
 *
 * @see "D. Blackman, S. Vigna, Scrambled linear pseudorandom number generators, ACM Trans. Math.
 *     Softw. 47 (2021) 36"
 * @see "G. Marsaglia, T. A. Bray, A convenient method for generating normal variables, SIAM Rev. 6
 *     (1964) 260"
 */
final class NormalDraws {
  private final UniformRandomProvider source;
  private double spare = Double.NaN;

  private NormalDraws(UniformRandomProvider source) {
    this.source = source;
  }

  /**
   * The draws of a purpose.
   *
   * @param seed seed of the whole laboratory
   * @param purpose what they are for; equal words give equal draws
   */
  static NormalDraws of(long seed, String purpose) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(ByteBuffer.allocate(Long.BYTES).putLong(seed).array());
      ByteBuffer hash = ByteBuffer.wrap(digest.digest(purpose.getBytes(StandardCharsets.UTF_8)));
      long[] state = {hash.getLong(), hash.getLong(), hash.getLong(), hash.getLong()};
      return new NormalDraws(RandomSource.XO_SHI_RO_256_PP.create(state));
    } catch (NoSuchAlgorithmException absent) {
      throw new IllegalStateException("every Java platform has SHA-256", absent);
    }
  }

  /** A draw from N(0, standardDeviation²). */
  double normal(double standardDeviation) {
    if (!Double.isNaN(spare)) {
      double kept = spare;
      spare = Double.NaN;
      return standardDeviation * kept;
    }
    double x;
    double y;
    double square;
    do {
      x = 2 * source.nextDouble() - 1;
      y = 2 * source.nextDouble() - 1;
      square = x * x + y * y;
    } while (square >= 1 || square == 0);
    double scale = StrictMath.sqrt(-2 * StrictMath.log(square) / square);
    spare = y * scale;
    return standardDeviation * x * scale;
  }

  /** A draw from the interval from low to high. */
  double uniform(double low, double high) {
    return low + (high - low) * source.nextDouble();
  }

  /** The same things in random order (Fisher and Yates). */
  <T> List<T> shuffled(List<T> things) {
    List<T> order = new ArrayList<>(things);
    for (int i = order.size() - 1; i > 0; i--) {
      int j = source.nextInt(i + 1);
      T moved = order.set(i, order.get(j));
      order.set(j, moved);
    }
    return order;
  }
}
