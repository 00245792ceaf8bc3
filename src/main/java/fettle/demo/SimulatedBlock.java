package fettle.demo;

import fettle.block.ReferenceBlock;

/**
 * A block as the laboratory knows it and as it is.
 *
 * @param block what is known: mark, geometry, certificate
 * @param trueHardness mean true hardness over the face, in the certificate's scale
 * @param elastic true elastic constants
 * @param contactFactor true contact factor, see {@link ResponseLaw}
 * @param face test face
 * @param field true variation over the face
 */
record SimulatedBlock(
    ReferenceBlock block,
    double trueHardness,
    ElasticConstants elastic,
    double contactFactor,
    Face face,
    HardnessField field) {

  /** Response at a place, without any chance of the reading. */
  double response(ResponseLaw law, Place place) {
    return law.response(trueHardness * (1 + field.at(place)), elastic, contactFactor);
  }
}
