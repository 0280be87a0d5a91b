namespace ScaleLink.Weighing.Statistics;

/// <summary>What a least squares fit found. Units follow the data.</summary>
sealed class LinearFit
{
    internal LinearFit(double[] coefficients, double[,] covariance, double[] residuals, double sumOfSquares, double total)
    {
        Coefficients = coefficients;
        Covariance = covariance;
        Residuals = residuals;
        ResidualSumOfSquares = sumOfSquares;
        RSquared = total > 0 ? 1 - sumOfSquares / total : double.NaN;
    }

    /// <summary>In the order of the design's columns.</summary>
    public IReadOnlyList<double> Coefficients { get; }

    /// <summary>Covariance of the coefficients.</summary>
    public double[,] Covariance { get; }

    /// <summary>Observed minus fitted, in the unit of y, one an observation.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>Sum of squares that was minimised: weighted by the stated covariance when there was one.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>Observations minus coefficients.</summary>
    public int DegreesOfFreedom => Residuals.Count - Coefficients.Count;

    /// <summary>Square root of the residual mean square; NaN without degrees of freedom.</summary>
    public double ResidualSd => DegreesOfFreedom > 0 ? Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom) : double.NaN;

    /// <summary>
    /// Share of the variation that the fit explains: about the mean when the model has a constant, about zero when it
    /// has none. NIST StRD makes the same distinction.
    /// </summary>
    public double RSquared { get; }

    /// <summary>Standard deviation of one coefficient.</summary>
    public double StandardDeviation(int coefficient) => Math.Sqrt(Covariance[coefficient, coefficient]);

    /// <summary>Correlation of two coefficients, -1 to 1.</summary>
    public double Correlation(int a, int b) => Covariance[a, b] / (StandardDeviation(a) * StandardDeviation(b));

    /// <summary>The fitted value for a row of the design, and its standard uncertainty.</summary>
    public (double Value, double StandardUncertainty) At(ReadOnlySpan<double> row)
    {
        double value = 0, variance = 0;
        for (var i = 0; i < row.Length; i++)
        {
            value += row[i] * Coefficients[i];
            for (var j = 0; j < row.Length; j++)
                variance += row[i] * row[j] * Covariance[i, j];
        }
        return (value, Math.Sqrt(variance));
    }
}
