namespace ScaleLink.Weighing.Statistics;

/// <summary>
/// Orthogonal factorisation X = Q R of a design matrix by Householder reflections, its columns first scaled to unit
/// length. Least squares without normal equations: forming XᵀX would square the condition number and cost half the
/// digits of a quadratic in raw counts. Source of the method: Golub and Van Loan, Matrix Computations, section 5.2
/// (from memory).
/// </summary>
public sealed class HouseholderQr
{
    // Below this share of the largest diagonal of R, scaled columns count as dependent.
    const double RankTolerance = 1e-11;

    readonly double[,] _factor;
    readonly double[] _diagonal;
    readonly double[] _scale;

    HouseholderQr(double[,] factor, double[] diagonal, double[] scale)
    {
        (_factor, _diagonal, _scale) = (factor, diagonal, scale);
        var largest = diagonal.Max(Math.Abs);
        FullRank = diagonal.All(d => Math.Abs(d) > RankTolerance * largest);
    }

    /// <summary>Number of observations.</summary>
    public int Rows => _factor.GetLength(0);

    /// <summary>Number of coefficients.</summary>
    public int Columns => _factor.GetLength(1);

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

        var a = (double[,])design.Clone();
        var scale = UnitColumns(a);
        var diagonal = new double[p];
        for (var k = 0; k < p; k++)
            diagonal[k] = Reflect(a, k);
        return new HouseholderQr(a, diagonal, scale);
    }

    /// <summary>Coefficients that minimise the sum of squares of <paramref name="y"/> - X b.</summary>
    /// <exception cref="InvalidOperationException">The design is not of full rank.</exception>
    public double[] Solve(ReadOnlySpan<double> y)
    {
        if (y.Length != Rows)
            throw new ArgumentException($"Expected {Rows} values, got {y.Length}.", nameof(y));
        RequireFullRank();

        var work = y.ToArray();
        for (var k = 0; k < Columns; k++)
            ApplyReflection(k, work);
        var b = BackSubstitute(work);
        for (var j = 0; j < Columns; j++)
            b[j] /= _scale[j];
        return b;
    }

    /// <summary>
    /// The matrix P with b = P y, columns of X by observations: what carries any covariance of y into the coefficients.
    /// </summary>
    public double[,] PseudoInverse()
    {
        var inverse = new double[Columns, Rows];
        var unit = new double[Rows];
        for (var i = 0; i < Rows; i++)
        {
            unit[i] = 1;
            var column = Solve(unit);
            unit[i] = 0;
            for (var j = 0; j < Columns; j++)
                inverse[j, i] = column[j];
        }
        return inverse;
    }

    /// <summary>(XᵀX)⁻¹, from R alone.</summary>
    public double[,] InverseGram()
    {
        RequireFullRank();
        int p = Columns;
        var inverseR = new double[p, p];
        var unit = new double[p];
        for (var k = 0; k < p; k++)
        {
            unit[k] = 1;
            var column = BackSubstitute(unit);
            unit[k] = 0;
            for (var j = 0; j < p; j++)
                inverseR[j, k] = column[j] / _scale[j];
        }
        return Matrices.TimesTransposed(inverseR, inverseR);
    }

    void RequireFullRank()
    {
        if (!FullRank)
            throw new InvalidOperationException("The observations cannot tell the coefficients apart.");
    }

    double[] BackSubstitute(ReadOnlySpan<double> rhs)
    {
        var b = new double[Columns];
        for (var j = Columns - 1; j >= 0; j--)
        {
            var sum = rhs[j];
            for (var k = j + 1; k < Columns; k++)
                sum -= _factor[j, k] * b[k];
            b[j] = sum / _diagonal[j];
        }
        return b;
    }

    void ApplyReflection(int k, double[] y)
    {
        if (_factor[k, k] == 0)
            return;
        var dot = 0.0;
        for (var i = k; i < Rows; i++)
            dot += _factor[i, k] * y[i];
        dot /= _factor[k, k];
        for (var i = k; i < Rows; i++)
            y[i] -= dot * _factor[i, k];
    }

    static double[] UnitColumns(double[,] a)
    {
        var scale = new double[a.GetLength(1)];
        for (var j = 0; j < scale.Length; j++)
        {
            var norm = 0.0;
            for (var i = 0; i < a.GetLength(0); i++)
                norm = double.Hypot(norm, a[i, j]);
            if (!double.IsFinite(norm))
                throw new ArgumentException($"Column {j} of the design holds a number that is not finite.");
            scale[j] = norm == 0 ? 1 : norm;
            for (var i = 0; i < a.GetLength(0); i++)
                a[i, j] /= scale[j];
        }
        return scale;
    }

    // Leaves the reflection vector in column k, on and below the diagonal; returns R's diagonal.
    static double Reflect(double[,] a, int k)
    {
        int n = a.GetLength(0), p = a.GetLength(1);
        var norm = 0.0;
        for (var i = k; i < n; i++)
            norm = double.Hypot(norm, a[i, k]);
        if (norm == 0)
            return 0;
        if (a[k, k] < 0)
            norm = -norm;
        for (var i = k; i < n; i++)
            a[i, k] /= norm;
        a[k, k] += 1;
        for (var j = k + 1; j < p; j++)
        {
            var dot = 0.0;
            for (var i = k; i < n; i++)
                dot += a[i, k] * a[i, j];
            dot /= a[k, k];
            for (var i = k; i < n; i++)
                a[i, j] -= dot * a[i, k];
        }
        return -norm;
    }
}
