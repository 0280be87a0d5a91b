namespace ScaleLink.Weighing.Statistics;

/// <summary>
/// The lowest of a ladder of nested models that the data do not contradict. A step up is taken only when the next
/// model's own coefficient stands out and the repeated points, or without repeats the pattern of the residuals, speak
/// against staying.
/// </summary>
/// <param name="Rung">Index of the chosen model in the ladder.</param>
/// <param name="Fit">The chosen model's fit.</param>
/// <param name="Next">The step up that was weighed last; null when there was none to take.</param>
/// <param name="LackOfFit">The chosen model against the repeats; null without repeats.</param>
/// <param name="Pattern">Signs of the chosen model's residuals along the load.</param>
sealed record ModelChoice(int Rung, LinearFit Fit, NestedTest? Next, NestedTest? LackOfFit, SignRuns Pattern)
{
    /// <summary>A step up whose coefficient would arise by chance more often than this is not taken.</summary>
    public const double StepChance = 0.01;

    /// <summary>A lack of fit that would arise by chance more often than this is no reason to step up.</summary>
    public const double LackOfFitChance = 0.05;

    // Beyond two residual degrees of freedom Student's t stops dwarfing the repeatability itself.
    const int LeastDegrees = 2;

    // Residuals this small against the data are the computer's rounding, not evidence.
    const double Rounding = 1e-26;

    /// <summary>True when the repeats contradict even the chosen model: something other than its shape is wrong.</summary>
    public bool Contradicted => LackOfFit is { Chance: < 0.001 };

    /// <summary>True when the observations can tell this model's coefficients and leave enough to judge it by.</summary>
    /// <param name="design">The model.</param>
    /// <param name="everyPoint">A design with one coefficient for each distinct point, or null without repeats.</param>
    public static bool Carries(double[,] design, double[,]? everyPoint)
    {
        ArgumentNullException.ThrowIfNull(design);
        int observations = design.GetLength(0), coefficients = design.GetLength(1);
        return observations - coefficients >= LeastDegrees
            && coefficients < (everyPoint?.GetLength(1) ?? observations)
            && HouseholderQr.Of(design).FullRank;
    }

    /// <summary>Chooses among <paramref name="ladder"/>, lowest first, each a design over the same observations.</summary>
    /// <param name="y">The observations.</param>
    /// <param name="ladder">Nested designs.</param>
    /// <param name="everyPoint">A design with one coefficient for each distinct point, or null without repeats.</param>
    /// <param name="along">Sorts the observations for the pattern of residuals, for example the load.</param>
    public static ModelChoice Choose(
        IReadOnlyList<double> y, IReadOnlyList<double[,]> ladder, double[,]? everyPoint, IReadOnlyList<double> along)
    {
        ArgumentNullException.ThrowIfNull(ladder);
        var rung = 0;
        var fit = LeastSquares.Fit(ladder[0], y);
        NestedTest? step = null;
        while (rung + 1 < ladder.Count && Carries(ladder[rung + 1], everyPoint) && !Exact(fit, y))
        {
            var higher = LeastSquares.Fit(ladder[rung + 1], y);
            step = NestedTest.Of(fit, higher);
            if (step is not { Chance: < StepChance } || !SpeaksAgainst(fit, everyPoint, along))
                break;
            (rung, fit) = (rung + 1, higher);
        }
        return new ModelChoice(rung, fit, step, LackOf(fit, everyPoint), Signs(fit, along));
    }

    static bool SpeaksAgainst(LinearFit fit, double[,]? everyPoint, IReadOnlyList<double> along) =>
        LackOf(fit, everyPoint) is { } lack ? lack.Chance < LackOfFitChance : Signs(fit, along) is { Deviation: < 0 };

    static NestedTest? LackOf(LinearFit fit, double[,]? everyPoint) =>
        everyPoint is null || everyPoint.GetLength(1) >= everyPoint.GetLength(0) ? null : NestedTest.LackOfFit(fit, everyPoint);

    static SignRuns Signs(LinearFit fit, IReadOnlyList<double> along) =>
        SignRuns.Of(fit.Residuals.Zip(along).OrderBy(pair => pair.Second).Select(pair => pair.First));

    static bool Exact(LinearFit fit, IReadOnlyList<double> y) =>
        fit.ResidualSumOfSquares <= Rounding * y.Sum(value => value * value);
}
