using ScaleLink.Weighing.Balance;

namespace ScaleLink.Daemon.Work;

/// <summary>Where a value stands against its target.</summary>
public enum AimVerdict
{
    /// <summary>The whole interval lies within the tolerance.</summary>
    OnTarget,
    /// <summary>The interval reaches over an edge of the tolerance.</summary>
    TooCloseToTell,
    /// <summary>The whole interval lies above.</summary>
    High,
    /// <summary>The whole interval lies below.</summary>
    Low,
}

/// <summary>Where cross weight stands by all settles since the last adjustment.</summary>
/// <param name="CrossWeightPercent">Mean of the settles.</param>
/// <param name="Settles">How many.</param>
/// <param name="Scatter">Between settles, percent, and what it rests on.</param>
/// <param name="Verdict">Against the target (JCGM 106:2012, 8.3: guarded acceptance).</param>
/// <param name="IsWithin">Whether the value lies within the tolerance, whatever its interval does.</param>
/// <param name="Words">For the crew.</param>
public sealed record Standing(Quantity CrossWeightPercent, int Settles, Scatter Scatter, AimVerdict Verdict, bool IsWithin, string Words)
{
    /// <summary>That of a session; null before its baseline.</summary>
    public static Standing? Of(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var groups = SettleGroups.Of(session.Captures);
        if (groups.Count == 0)
            return null;
        var settles = groups[^1];
        var recipe = session.Start.Recipe;
        var scatter = SettleGroups.Pool(groups, new(recipe.ScatterPercent, recipe.DegreesOfFreedom));
        var values = settles.Select(c => c.Step.Reading.Whole.CrossWeightPercent).ToList();
        var mean = values.Average(v => v.Value);
        var ofSettling = scatter.Percent / Math.Sqrt(values.Count);
        // Calibration and patch err alike in every settle: they do not average out.
        var standing = settles.Average(c => StandingPart(c.Step.Reading));
        var u = Math.Sqrt(ofSettling * ofSettling + standing * standing);
        // Welch and Satterthwaite (JCGM 100:2008, G.4.1); only the scatter has few degrees of freedom.
        var freedom = scatter.DegreesOfFreedom * Math.Pow(u / ofSettling, 4);
        var cross = new Quantity(mean, u, freedom);
        var verdict = Judge(cross, session.Start.TargetPercent, session.Start.TolerancePercent);
        var isWithin = Math.Abs(mean - session.Start.TargetPercent) <= session.Start.TolerancePercent;
        return new(cross, values.Count, scatter, verdict, isWithin, WordsOf(cross, values.Count, verdict));
    }

    private static double StandingPart(CapturedReading reading)
    {
        var (whole, steps) = (reading.Whole.CrossWeightPercent.StandardUncertainty, reading.ForSteps.CrossWeightPercent.StandardUncertainty);
        return Math.Sqrt(Math.Max(0, whole * whole - steps * steps));
    }

    private static AimVerdict Judge(Quantity cross, double target, double tolerance)
    {
        var (off, half) = (cross.Value - target, cross.HalfWidth());
        if (Math.Abs(off) + half <= tolerance)
            return AimVerdict.OnTarget;
        return Math.Abs(off) - half <= tolerance ? AimVerdict.TooCloseToTell : off > 0 ? AimVerdict.High : AimVerdict.Low;
    }

    private static string WordsOf(Quantity cross, int settles, AimVerdict verdict)
    {
        var figure = $"{Wording.WithInterval(cross, "%")} (95 %, Student t, {settles} {(settles == 1 ? "settle" : "settles")})";
        return verdict switch
        {
            AimVerdict.OnTarget => $"on target: {figure}",
            AimVerdict.TooCloseToTell => $"too close to tell: {figure}",
            AimVerdict.High => $"above target: {figure}",
            _ => $"below target: {figure}",
        };
    }
}
