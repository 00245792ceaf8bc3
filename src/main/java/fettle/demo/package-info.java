/**
 * The demo laboratory: an invented laboratory whose blocks and readings are simulated from physics.
 *
 * <p>Everything here is invented and marked so; none of it may be used for parts. Two halves: the
 * physics of the two measuring principles ({@link fettle.demo.UciRod}, {@link
 * fettle.demo.ReboundBody}) and the chance around it (blocks, certificates, runs), all from one
 * seed. The result is files as a laboratory would receive them and an account of the dossiers they
 * belong to. Knows the words of blocks and quantities; does not know the library, the fit or the
 * checks, so that nothing of the truth can reach a calculation it is meant to test.
 */
package fettle.demo;
