using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Standings;

/// <summary>Where cross weight stands by all settles since the last adjustment.</summary>
/// <param name="CrossWeightPercent">Mean of the settles.</param>
/// <param name="Settles">How many.</param>
/// <param name="Repeatability">Between settles, percent, and what it rests on.</param>
/// <param name="Verdict">Against the target (JCGM 106:2012, 8.3: guarded acceptance).</param>
/// <param name="IsWithin">Whether the value lies within the tolerance, whatever its interval does.</param>
/// <param name="Words">For the crew.</param>
internal sealed record Standing(Value CrossWeightPercent, int Settles, Repeatability Repeatability, Aim Verdict, bool IsWithin, string Words)
{
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
        var ofSettling = repeatability.Percent / Math.Sqrt(values.Count);
        // Calibration and patch err alike in every settle: they do not average out.
        var standing = settles.Average(c => StandingPart(c.Step.Reading));
        var u = Math.Sqrt(ofSettling * ofSettling + standing * standing);
        // Welch and Satterthwaite (JCGM 100:2008, G.4.1); only the repeatability has few degrees of freedom.
        var freedom = repeatability.DegreesOfFreedom * Math.Pow(u / ofSettling, 4);
        var cross = new Value(mean, u, freedom);
        var verdict = new TargetBand(session.Start.TargetPercent, session.Start.TolerancePercent).Judge(cross);
        var isWithin = Math.Abs(mean - session.Start.TargetPercent) <= session.Start.TolerancePercent;
        return new(cross, values.Count, repeatability, verdict, isWithin, WordsOf(cross, values.Count, verdict));
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
