using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Standings;

/// <summary>Where cross weight stands by all settles since the last adjustment.</summary>
/// <param name="CrossWeightPercent">Mean of the settles.</param>
/// <param name="Settles">How many.</param>
/// <param name="Repeatability">Between settles, percent, and what it rests on.</param>
/// <param name="Verdict">Against the target (JCGM 106:2012, 8.3: guarded acceptance).</param>
/// <param name="IsWithin">Whether the value lies within the tolerance, whatever its interval does.</param>
/// <param name="Words">Verdict and figure, for the record.</param>
/// <param name="MoreSettles">So many more are likely to decide it, if their mean stays; 0: it is decided; null: settling alone will not.</param>
internal sealed record Standing(Value CrossWeightPercent, int Settles, Repeatability Repeatability, Aim Verdict, bool IsWithin, string Words, int? MoreSettles)
{
    // Who would have to settle more often than that has to better something else.
    private const int MostMore = 5;

    /// <summary>For the crew: what it is, and what would make it sure. On a phone it has two lines beside the number.</summary>
    public string Headline => Verdict switch
    {
        Aim.Within => "on target",
        Aim.High => "above target",
        Aim.Low => "below target",
        _ when MoreSettles is { } more => $"{(IsWithin ? "on" : "off")} target so far: settle {Times(more)} more",
        _ => "too close to decide by settling",
    };

    /// <summary>"once", "twice", "3 times".</summary>
    public static string Times(int count) => count switch { 1 => "once", 2 => "twice", _ => $"{count} times" };

    /// <summary>That of a session; null before its baseline.</summary>
    public static Standing? Of(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var groups = SettleGroups.Of(session.Weighings);
        if (groups.Count == 0)
            return null;
        var settles = groups[^1];
        var settleMethod = session.Start.SettleMethod;
        var repeatability = SettleGroups.Pool(groups, new(settleMethod.RepeatabilityPercent, settleMethod.DegreesOfFreedom));
        var values = settles.Select(c => c.Step.Reading.Whole.CrossWeightPercent).ToList();
        var mean = values.Average(v => v.Estimate);
        // Calibration and patch err alike in every settle: they do not average out.
        var standing = settles.Average(c => StandingPart(c.Step.Reading));
        var band = new TargetBand(session.Start.TargetPercent, session.Start.TolerancePercent);
        var cross = Of(mean, standing, repeatability, values.Count);
        var verdict = band.Judge(cross);
        var isWithin = Math.Abs(mean - band.Centre) <= band.Tolerance;
        return new(cross, values.Count, repeatability, verdict, isWithin, WordsOf(cross, values.Count, verdict), verdict == Aim.TooCloseToTell ? More(mean, standing, repeatability, values.Count, band) : 0);
    }

    private static Value Of(double mean, double standing, Repeatability repeatability, int settles)
    {
        var ofSettling = repeatability.Percent / Math.Sqrt(settles);
        var u = Math.Sqrt(ofSettling * ofSettling + standing * standing);
        // Welch and Satterthwaite (JCGM 100:2008, G.4.1); only the repeatability has few degrees of freedom.
        return new(mean, u, repeatability.DegreesOfFreedom * Math.Pow(u / ofSettling, 4));
    }

    // Each settle more is one more degree of freedom of the repeatability, too.
    private static int? More(double mean, double standing, Repeatability repeatability, int settles, TargetBand band)
    {
        for (var more = 1; more <= MostMore; more++)
            if (band.Judge(Of(mean, standing, repeatability with { DegreesOfFreedom = repeatability.DegreesOfFreedom + more }, settles + more)) != Aim.TooCloseToTell)
                return more;
        return null;
    }

    private static double StandingPart(RecordedWeighing reading)
    {
        var (whole, steps) = (reading.Whole.CrossWeightPercent.Uncertainty, reading.ForSteps.CrossWeightPercent.Uncertainty);
        return Math.Sqrt(Math.Max(0, whole * whole - steps * steps));
    }

    private static string WordsOf(Value cross, int settles, Aim verdict)
    {
        var figure = $"{ValueText.Of(cross, Unit.Percent).Full} (95 %, Student t, {settles} {(settles == 1 ? "settle" : "settles")})";
        return verdict switch
        {
            Aim.Within => $"on target: {figure}",
            Aim.TooCloseToTell => $"too close to tell: {figure}",
            Aim.High => $"above target: {figure}",
            _ => $"below target: {figure}",
        };
    }
}
