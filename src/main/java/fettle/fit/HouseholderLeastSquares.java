package fettle.fit;

/**
 * Least squares by Householder reflections, reusing its storage from one solution to the next.
 *
 * <p><b>Storage:</b> column-major, one array a column, the right-hand side as a last column; all
 * overwritten by {@link #factor}. <b>Cost:</b> about 2 r n² flops for r rows and n columns. Own
 * code because it runs inside every iteration of every refit, on matrices of some ten rows.
 *
 * @see "G. H. Golub, C. F. Van Loan, Matrix Computations, 4th ed. (2013), algorithms 5.1.1, 5.2.1"
 */
final class HouseholderLeastSquares {
  private final int columns;
  private final double[][] a;
  private final double[] diagonal;
  private final double[] columnNorm;
  private final double[] reflection;
  private int rows;

  HouseholderLeastSquares(int capacity, int columns) {
    this.columns = columns;
    this.a = new double[columns + 1][capacity];
    this.diagonal = new double[columns];
    this.columnNorm = new double[columns];
    this.reflection = new double[columns];
  }

  /** Starts a new system. */
  void clear() {
    rows = 0;
  }

  /** Adds a row of zeros and returns its index; fill it with {@link #set}. */
  int addRow() {
    for (double[] column : a) {
      column[rows] = 0;
    }
    return rows++;
  }

  void set(int row, int column, double value) {
    a[column][row] = value;
  }

  void setRightHandSide(int row, double value) {
    a[columns][row] = value;
  }

  /** Number of rows so far. */
  int rows() {
    return rows;
  }

  /** Reduces to triangular form; R's diagonal may hold zeros when columns are dependent. */
  void factor() {
    for (int j = 0; j < columns; j++) {
      double[] column = a[j];
      double whole = 0;
      for (int i = 0; i < rows; i++) {
        whole += column[i] * column[i];
      }
      columnNorm[j] = Math.sqrt(whole);
      double below = 0;
      for (int i = j; i < rows; i++) {
        below += column[i] * column[i];
      }
      double norm = Math.sqrt(below);
      if (norm == 0) {
        diagonal[j] = 0;
        reflection[j] = 0;
        continue;
      }
      double alpha = column[j] > 0 ? -norm : norm;
      diagonal[j] = alpha;
      column[j] -= alpha;
      double factor = -1 / (alpha * column[j]);
      reflection[j] = factor;
      for (int k = j + 1; k <= columns; k++) {
        double[] other = a[k];
        double dot = 0;
        for (int i = j; i < rows; i++) {
          dot += column[i] * other[i];
        }
        dot *= factor;
        for (int i = j; i < rows; i++) {
          other[i] -= dot * column[i];
        }
      }
    }
  }

  /** Solves R x = Qᵀ b; entries are infinite or NaN when a diagonal is zero. */
  void solve(double[] x) {
    for (int j = columns - 1; j >= 0; j--) {
      double sum = a[columns][j];
      for (int k = j + 1; k < columns; k++) {
        sum -= a[k][j] * x[k];
      }
      x[j] = sum / diagonal[j];
    }
  }

  /**
   * Solves for another right-hand side with the factors at hand.
   *
   * @param rightHandSide length rows, overwritten
   * @param x filled with the solution
   */
  void solve(double[] rightHandSide, double[] x) {
    for (int j = 0; j < columns; j++) {
      double[] column = a[j];
      double dot = 0;
      for (int i = j; i < rows; i++) {
        dot += column[i] * rightHandSide[i];
      }
      dot *= reflection[j];
      for (int i = j; i < rows; i++) {
        rightHandSide[i] -= dot * column[i];
      }
    }
    for (int j = columns - 1; j >= 0; j--) {
      double sum = rightHandSide[j];
      for (int k = j + 1; k < columns; k++) {
        sum -= a[k][j] * x[k];
      }
      x[j] = sum / diagonal[j];
    }
  }

  /** ln|AᵀA|. */
  double logDeterminant() {
    double sum = 0;
    for (double d : diagonal) {
      sum += StrictMath.log(Math.abs(d));
    }
    return 2 * sum;
  }

  /** ln|AᵀA| of the leading columns alone. */
  double logDeterminantOfLeading(int count) {
    double sum = 0;
    for (int j = 0; j < count; j++) {
      sum += StrictMath.log(Math.abs(diagonal[j]));
    }
    return 2 * sum;
  }

  /** Trailing p × p block of (AᵀA)⁻¹, row-major: (R_pp)⁻¹(R_pp)⁻ᵀ. */
  double[] trailingCovariance(int p) {
    double[] inverse = inverseOfTrailing(p);
    double[] covariance = new double[p * p];
    for (int i = 0; i < p; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = 0;
        for (int k = i; k < p; k++) {
          sum += inverse[i * p + k] * inverse[j * p + k];
        }
        covariance[i * p + j] = sum;
        covariance[j * p + i] = sum;
      }
    }
    return covariance;
  }

  private double[] inverseOfTrailing(int p) {
    int first = columns - p;
    double[] inverse = new double[p * p];
    for (int j = 0; j < p; j++) {
      inverse[j * p + j] = 1 / diagonal[first + j];
      for (int i = j - 1; i >= 0; i--) {
        double sum = 0;
        for (int k = i + 1; k <= j; k++) {
          sum += a[first + k][first + i] * inverse[k * p + j];
        }
        inverse[i * p + j] = -sum / diagonal[first + i];
      }
    }
    return inverse;
  }

  /**
   * Condition number, in the Frobenius norm over p, of the trailing block with its columns scaled
   * to unit length: at least the true one over p and at most p times it.
   */
  double trailingCondition(int p) {
    int first = columns - p;
    double[] inverse = inverseOfTrailing(p);
    double norm = 0;
    double inverseNorm = 0;
    for (int j = 0; j < p; j++) {
      double scale = columnNorm[first + j];
      for (int i = 0; i <= j; i++) {
        double r = i == j ? diagonal[first + j] : a[first + j][first + i];
        norm += r / scale * (r / scale);
      }
      for (int k = j; k < p; k++) {
        double element = inverse[j * p + k] * scale;
        inverseNorm += element * element;
      }
    }
    return Math.sqrt(norm * inverseNorm) / p;
  }
}
