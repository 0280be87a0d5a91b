using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Learning;

namespace ScaleLink.Daemon.Work;

/// <summary>Looks at a settled car between two captures: does it stand otherwise than settling explains, although nobody recorded anything?</summary>
internal static class UnnamedChange
{
    /// <summary>What to ask the crew; null while there is nothing to ask.</summary>
    /// <param name="view">The session.</param>
    /// <param name="now">The present reading, good for the record; null when there is none.</param>
    public static Finding? Of(SessionView view, CapturedReading? now)
    {
        if (now is null || view is not { Stage: SessionStage.Planning or SessionStage.Finishing, Session: { Known: { } known, Captures: [.., var last] } session }
            || now.IsSameRestAs(last.Step.Reading) || !IsWithoutName(view))
            return null;
        if (UnrecordedChange.Between(known, now.ForSteps) is { Kind: not UnrecordedKind.LooksLikePerch } mass)
            return mass.Finding;
        var standing = Standing.Of(session)!;
        var change = now.CrossWeightPercent - standing.CrossWeightPercent.Value;
        // One settle against the mean of those since the last adjustment; Student's t of what the scatter rests on (JCGM 100:2008, G.3).
        var doubt = new Quantity(change, standing.Scatter.Percent * Math.Sqrt(1 + 1.0 / standing.Settles), standing.Scatter.DegreesOfFreedom).HalfWidth();
        return Math.Abs(change) <= doubt ? null : new(WorkCodes.ChangedUnnamed,
            $"The settled car stands at {now.CrossWeightPercent:0.00} %, {change:+0.00;-0.00} % off its last reading; settling alone does {doubt:0.00} % (95 %).",
            "If a perch was turned, record it now. Otherwise settle again and capture.");
    }

    // With bars connected again the next reading verifies them and speaks for itself.
    private static bool IsWithoutName(SessionView view) => !view.LastSteps.Any(c => c.Item.Key == CheckLists.BarsAgain && c.IsDone);
}
