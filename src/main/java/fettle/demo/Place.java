package fettle.demo;

/** A place on a test face, in mm from the lower left corner of the square around the face. */
record Place(double xMm, double yMm) {}
