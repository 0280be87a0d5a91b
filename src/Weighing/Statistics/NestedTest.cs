namespace ScaleLink.Weighing.Statistics;

/// <summary>
/// Does the larger of two nested models earn its extra coefficients? Fisher's F on the drop of the residual sum of
/// squares. Against a model with one coefficient for each distinct point this is the lack of fit test on repeated
/// points. Source: Draper and Smith, Applied Regression Analysis (from memory).
/// </summary>
/// <param name="F">Mean square of the drop over the residual mean square of the larger model.</param>
/// <param name="ExtraDegrees">Coefficients that the larger model has more.</param>
/// <param name="ResidualDegrees">Degrees of freedom that the larger model leaves.</param>
sealed record NestedTest(double F, int ExtraDegrees, int ResidualDegrees)
{
    /// <summary>Chance of so large an F when the smaller model is right.</summary>
    public double Chance => Probability.AboveF(F, ExtraDegrees, ResidualDegrees);

    /// <summary>
    /// Lack of fit: the repeatability is what repeats show within the points of <paramref name="everyPoint"/>, a design with
    /// one coefficient for each distinct point. It is applied to the residuals, so that it also holds where the repeatability
    /// lies in the regressor. Null where nothing is repeated.
    /// </summary>
    public static NestedTest? LackOfFit(LinearFit fit, double[,] everyPoint)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return Of(fit, LeastSquares.Fit(everyPoint, fit.Residuals));
    }

    /// <summary>Null where the larger model leaves no repeatability to judge by, or adds nothing.</summary>
    public static NestedTest? Of(LinearFit smaller, LinearFit larger)
    {
        ArgumentNullException.ThrowIfNull(smaller);
        ArgumentNullException.ThrowIfNull(larger);
        var extra = smaller.DegreesOfFreedom - larger.DegreesOfFreedom;
        if (extra < 1 || larger.DegreesOfFreedom < 1)
            return null;

        var drop = Math.Max(0, smaller.ResidualSumOfSquares - larger.ResidualSumOfSquares) / extra;
        var repeatability = larger.ResidualSumOfSquares / larger.DegreesOfFreedom;
        var f = repeatability > 0 ? drop / repeatability : drop > 0 ? double.PositiveInfinity : 0;
        return new NestedTest(f, extra, larger.DegreesOfFreedom);
    }
}
