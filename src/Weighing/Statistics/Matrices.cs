namespace ScaleLink.Weighing.Statistics;

/// <summary>The few products of small dense matrices that fits and uncertainties need.</summary>
static class Matrices
{
    /// <summary>A Bᵀ.</summary>
    public static double[,] TimesTransposed(double[,] a, double[,] b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var product = new double[a.GetLength(0), b.GetLength(0)];
        for (var i = 0; i < product.GetLength(0); i++)
            for (var j = 0; j < product.GetLength(1); j++)
                for (var k = 0; k < a.GetLength(1); k++)
                    product[i, j] += a[i, k] * b[j, k];
        return product;
    }

    /// <summary>A x.</summary>
    public static double[] Times(double[,] a, ReadOnlySpan<double> x)
    {
        ArgumentNullException.ThrowIfNull(a);
        var product = new double[a.GetLength(0)];
        for (var i = 0; i < product.Length; i++)
            for (var j = 0; j < x.Length; j++)
                product[i] += a[i, j] * x[j];
        return product;
    }

    /// <summary>
    /// The law of propagation with correlated inputs, J V Jᵀ: covariance of results whose sensitivities are the rows of
    /// <paramref name="jacobian"/>. Source: JCGM 100:2008 (GUM) 5.2.2.
    /// </summary>
    public static double[,] Propagate(double[,] jacobian, double[,] covariance)
    {
        ArgumentNullException.ThrowIfNull(jacobian);
        // V is symmetric, so J V = J Vᵀ.
        return TimesTransposed(TimesTransposed(jacobian, covariance), jacobian);
    }

    /// <summary>The lower triangle L with A = L Lᵀ.</summary>
    /// <exception cref="ArgumentException"><paramref name="a"/> is not positive definite.</exception>
    public static double[,] Cholesky(double[,] a)
    {
        ArgumentNullException.ThrowIfNull(a);
        var n = a.GetLength(0);
        var lower = new double[n, n];
        for (var j = 0; j < n; j++)
            for (var i = j; i < n; i++)
            {
                var sum = a[i, j];
                for (var k = 0; k < j; k++)
                    sum -= lower[i, k] * lower[j, k];
                if (i == j && !(sum > 0))
                    throw new ArgumentException("A covariance matrix must be positive definite.", nameof(a));
                lower[i, j] = i == j ? Math.Sqrt(sum) : sum / lower[j, j];
            }
        return lower;
    }

    /// <summary>L⁻¹ B for a lower triangle L: takes the correlation out of the columns of B.</summary>
    public static double[,] ForwardSubstitute(double[,] lower, double[,] b)
    {
        ArgumentNullException.ThrowIfNull(lower);
        ArgumentNullException.ThrowIfNull(b);
        var x = (double[,])b.Clone();
        for (var column = 0; column < x.GetLength(1); column++)
            for (var i = 0; i < x.GetLength(0); i++)
            {
                for (var k = 0; k < i; k++)
                    x[i, column] -= lower[i, k] * x[k, column];
                x[i, column] /= lower[i, i];
            }
        return x;
    }
}
