package fettle.fit;

/**
 * What the data do to the parameters, to first order at the minimum: δβ = A (δH − D δr̄) with A =
 * (JᵀV⁻¹J)⁻¹JᵀV⁻¹ and D = diag(dg/dr).
 *
 * <p>Splits the covariance by source: a shared source that shifts the hardnesses by c shifts β by A
 * c, and A V Aᵀ is the whole covariance (GUM:2008, 5.1.2; ISO/TS 28037:2010 annex D).
 *
 * <p><b>Cost:</b> O(m (p + q)) a shift after one factorization.
 */
public final class FitSensitivity {
  private final CurveFit fit;
  private final double[] roots;
  private final HouseholderLeastSquares system;
  private final int rows;
  private final int columns;

  /**
   * Prepares the sensitivities of a fit.
   *
   * @param fit a fit
   * @param points the points it was made from
   * @throws FitFailedException if the model is not finite there, which a finished fit excludes
   */
  public FitSensitivity(CurveFit fit, Points points) throws FitFailedException {
    this.fit = fit;
    int m = points.size();
    this.columns =
        points.hardnessEffectCount() + points.responseEffectCount() + fit.parameterCount();
    this.roots = new double[m];
    for (int i = 0; i < m; i++) {
      roots[i] = Math.sqrt(fit.effectiveVariances()[i]);
    }
    this.system = FitState.factored(fit, points);
    this.rows = system.rows();
  }

  /**
   * Change of β when the hardnesses change.
   *
   * @param shift change of each hardness, length m, in the scale's unit
   * @return change of β, length p
   */
  public double[] ofHardnessShift(double[] shift) {
    double[] rightHandSide = new double[rows];
    for (int i = 0; i < roots.length; i++) {
      rightHandSide[i] = shift[i] / roots[i];
    }
    double[] solution = new double[columns];
    system.solve(rightHandSide, solution);
    int p = fit.parameterCount();
    double[] change = new double[p];
    System.arraycopy(solution, columns - p, change, 0, p);
    return change;
  }

  /**
   * Change of β when the responses change.
   *
   * @param shift change of each response, length m, in the response unit
   * @return change of β, length p
   */
  public double[] ofResponseShift(double[] shift) {
    double[] along = new double[shift.length];
    for (int i = 0; i < shift.length; i++) {
      along[i] = -fit.slopes()[i] * shift[i];
    }
    return ofHardnessShift(along);
  }

  /**
   * The matrix A, one row a point.
   *
   * @return m arrays of length p: what one unit of hardness of point i does to β
   */
  public double[][] byPoint() {
    double[][] matrix = new double[roots.length][];
    double[] unit = new double[roots.length];
    for (int i = 0; i < roots.length; i++) {
      unit[i] = 1;
      matrix[i] = ofHardnessShift(unit);
      unit[i] = 0;
    }
    return matrix;
  }
}
