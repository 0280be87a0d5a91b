namespace ScaleLink.Weighing.Statistics;

/// <summary>One named cause of uncertainty, in the unit of the result.</summary>
/// <param name="Name">Trade word, stable, for people and for records.</param>
/// <param name="StandardUncertainty">One standard uncertainty, sensitivity included.</param>
/// <param name="DegreesOfFreedom">Infinity when the size is taken as known.</param>
readonly record struct UncertaintyTerm(string Name, double StandardUncertainty, double DegreesOfFreedom = double.PositiveInfinity);

/// <summary>Independent terms and what they come to. Source: JCGM 100:2008 (GUM) 5.1.2 and G.4.1.</summary>
/// <param name="Terms">In any order.</param>
sealed record UncertaintyBudget(IReadOnlyList<UncertaintyTerm> Terms)
{
    /// <summary>Combined standard uncertainty.</summary>
    public double StandardUncertainty => Math.Sqrt(Terms.Sum(t => t.StandardUncertainty * t.StandardUncertainty));

    /// <summary>
    /// Effective degrees of freedom by the Welch-Satterthwaite formula; infinity when no term with few degrees counts.
    /// Holds for independent terms only.
    /// </summary>
    public double DegreesOfFreedom
    {
        get
        {
            var shared = Terms.Sum(t => Math.Pow(t.StandardUncertainty, 4) / t.DegreesOfFreedom);
            return shared > 0 ? Math.Pow(StandardUncertainty, 4) / shared : double.PositiveInfinity;
        }
    }

    /// <summary>
    /// Half-width of the interval of the given coverage. The degrees of freedom are rounded down to a whole number
    /// first, as GUM G.4.1 asks, and taken as one where they are fewer.
    /// </summary>
    public double Expanded(double coverage = 0.95) =>
        StandardUncertainty * Coverage.Factor(DegreesOfFreedom, coverage);

    /// <summary>The largest term; where work pays first.</summary>
    public UncertaintyTerm Largest => Terms.MaxBy(t => t.StandardUncertainty);
}
