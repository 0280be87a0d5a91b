using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace ScaleLink.Weighing.Statistics;

/// <summary>
/// Orthogonal factorisation X = Q R of a design matrix, its columns first scaled to unit length, so that one tolerance
/// judges the rank of counts and degrees alike. Least squares without normal equations: forming XᵀX would square the
/// condition number and cost half the digits of a quadratic in raw counts.
/// </summary>
sealed class HouseholderQr
{
    // Below this share of the largest diagonal of R, scaled columns count as dependent.
    const double RankTolerance = 1e-11;

    readonly QR<double> _factor;
    readonly Vector<double> _scale;

    HouseholderQr(Matrix<double> design, Vector<double> scale)
    {
        (Rows, Columns, _scale) = (design.RowCount, design.ColumnCount, scale);
        _factor = Matrix<double>.Build.Dense(Rows, Columns, (i, j) => design[i, j] / scale[j]).QR(QRMethod.Thin);
        var diagonal = _factor.R.Diagonal().PointwiseAbs();
        FullRank = diagonal.Minimum() > RankTolerance * diagonal.Maximum();
    }

    /// <summary>Number of observations.</summary>
    public int Rows { get; }

    /// <summary>Number of coefficients.</summary>
    public int Columns { get; }

    /// <summary>False when some coefficient cannot be told from the others by these observations.</summary>
    public bool FullRank { get; }

    /// <summary>Factorises <paramref name="design"/>, rows by columns, rows at least columns. The argument is left alone.</summary>
    /// <exception cref="ArgumentException">Fewer rows than columns, no columns, or a number that is not finite.</exception>
    public static HouseholderQr Of(double[,] design)
    {
        ArgumentNullException.ThrowIfNull(design);
        int n = design.GetLength(0), p = design.GetLength(1);
        if (p == 0 || n < p)
            throw new ArgumentException($"A fit of {p} coefficients needs as many observations; there are {n}.", nameof(design));

        var matrix = Matrix<double>.Build.DenseOfArray(design);
        var norms = matrix.ColumnNorms(2);
        if (!norms.All(double.IsFinite))
            throw new ArgumentException("The design holds a number that is not finite.", nameof(design));
        return new HouseholderQr(matrix, norms.Map(norm => norm == 0 ? 1 : norm));
    }

    /// <summary>Coefficients that minimise the sum of squares of <paramref name="y"/> - X b.</summary>
    /// <exception cref="InvalidOperationException">The design is not of full rank.</exception>
    public double[] Solve(ReadOnlySpan<double> y)
    {
        if (y.Length != Rows)
            throw new ArgumentException($"Expected {Rows} values, got {y.Length}.", nameof(y));
        RequireFullRank();
        return _factor.Solve(Vector<double>.Build.Dense(y.ToArray())).PointwiseDivide(_scale).ToArray();
    }

    /// <summary>
    /// The matrix P with b = P y, columns of X by observations: what carries any covariance of y into the coefficients.
    /// </summary>
    public double[,] PseudoInverse()
    {
        RequireFullRank();
        return Unscaled(_factor.Solve(Matrix<double>.Build.DenseIdentity(Rows))).ToArray();
    }

    /// <summary>(XᵀX)⁻¹, from R alone.</summary>
    public double[,] InverseGram()
    {
        RequireFullRank();
        var inverseR = Unscaled(_factor.R.Inverse());
        return inverseR.TransposeAndMultiply(inverseR).ToArray();
    }

    Matrix<double> Unscaled(Matrix<double> rows) => Matrix<double>.Build.Dense(rows.RowCount, rows.ColumnCount, (i, j) => rows[i, j] / _scale[i]);

    void RequireFullRank()
    {
        if (!FullRank)
            throw new InvalidOperationException("The observations cannot tell the coefficients apart.");
    }
}
