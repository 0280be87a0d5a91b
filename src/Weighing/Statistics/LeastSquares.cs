namespace ScaleLink.Weighing.Statistics;

/// <summary>Where the size of the coefficients' covariance comes from.</summary>
enum Repeatability
{
    /// <summary>From the residuals: the stated covariance counts only by its shape. Student's t applies.</summary>
    Observed,
    /// <summary>From the stated covariance, taken as known.</summary>
    Stated,
}

/// <summary>Linear least squares: plain, weighted, and with correlated observations.</summary>
static class LeastSquares
{
    /// <summary>Observations of equal, unknown, independent repeatability.</summary>
    /// <exception cref="InvalidOperationException">The observations cannot tell the coefficients apart.</exception>
    public static LinearFit Fit(double[,] design, IReadOnlyList<double> y) =>
        Whitened(design, y, design, [.. y], Ones(y.Count), Repeatability.Observed);

    /// <summary>Independent observations, each with its own standard uncertainty, in the unit of y.</summary>
    public static LinearFit Weighted(
        double[,] design, IReadOnlyList<double> y, IReadOnlyList<double> standardUncertainties, Repeatability repeatability = Repeatability.Stated)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(y);
        ArgumentNullException.ThrowIfNull(standardUncertainties);
        if (standardUncertainties.Any(u => !(u > 0)))
            throw new ArgumentException("Every standard uncertainty must be above zero.", nameof(standardUncertainties));

        var scaled = (double[,])design.Clone();
        for (var i = 0; i < y.Count; i++)
            for (var j = 0; j < scaled.GetLength(1); j++)
                scaled[i, j] /= standardUncertainties[i];
        return Whitened(
            design, y, scaled, [.. y.Zip(standardUncertainties, (value, u) => value / u)],
            [.. standardUncertainties.Select(u => 1 / u)], repeatability);
    }

    /// <summary>
    /// Correlated observations (generalised least squares): the covariance, observations squared, is taken out of both
    /// sides by its Cholesky factor before the fit.
    /// </summary>
    public static LinearFit Generalised(
        double[,] design, IReadOnlyList<double> y, double[,] covariance, Repeatability repeatability = Repeatability.Stated)
    {
        ArgumentNullException.ThrowIfNull(y);
        var lower = Matrices.Cholesky(covariance);
        return Whitened(
            design, y, Matrices.ForwardSubstitute(lower, design), Column(lower, y), Column(lower, Ones(y.Count)), repeatability);
    }

    static LinearFit Whitened(
        double[,] design, IReadOnlyList<double> y, double[,] whiteDesign, double[] whiteY, double[] whiteOne, Repeatability repeatability)
    {
        var factor = HouseholderQr.Of(whiteDesign);
        var coefficients = factor.Solve(whiteY);
        var sumOfSquares = SumOfSquares(Residuals(whiteDesign, whiteY, coefficients));
        var covariance = factor.InverseGram();
        if (repeatability == Repeatability.Observed)
            Scale(covariance, sumOfSquares / (factor.Rows - factor.Columns));

        var total = HasConstant(design, ReferenceEquals(design, whiteDesign) ? factor : HouseholderQr.Of(design)) ? AboutMean(whiteY, whiteOne) : SumOfSquares(whiteY);
        return new LinearFit(coefficients, covariance, Residuals(design, y, coefficients), sumOfSquares, total);
    }

    static double[] Residuals(double[,] design, IReadOnlyList<double> y, double[] coefficients)
    {
        var fitted = Matrices.Times(design, coefficients);
        return [.. y.Select((value, i) => value - fitted[i])];
    }

    // Columns that add up to one everywhere (a zero for each run) make a constant as well as a column of ones does.
    static bool HasConstant(double[,] design, HouseholderQr factor)
    {
        var ones = Ones(design.GetLength(0));
        var rest = Residuals(design, ones, factor.Solve(ones));
        return SumOfSquares(rest) < 1e-16 * ones.Length;
    }

    static double AboutMean(double[] y, double[] one)
    {
        var mean = y.Zip(one, (value, unit) => value * unit).Sum() / SumOfSquares(one);
        return SumOfSquares([.. y.Zip(one, (value, unit) => value - mean * unit)]);
    }

    static double[] Column(double[,] lower, double[] y) => Column(lower, (IReadOnlyList<double>)y);

    static double[] Column(double[,] lower, IReadOnlyList<double> y)
    {
        var white = Matrices.ForwardSubstitute(lower, Design.Of(y.Count, i => y[i]));
        return [.. Enumerable.Range(0, y.Count).Select(i => white[i, 0])];
    }

    static double[] Ones(int count) => [.. Enumerable.Repeat(1.0, count)];

    static double SumOfSquares(double[] values) => values.Sum(v => v * v);

    static void Scale(double[,] matrix, double factor)
    {
        for (var i = 0; i < matrix.GetLength(0); i++)
            for (var j = 0; j < matrix.GetLength(1); j++)
                matrix[i, j] *= factor;
    }
}
