using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.WorkSessions.Learning;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Standings;

/// <summary>Does the settled car stand otherwise than settling explains, although nobody recorded anything? One rule, whether somebody weighings it or not.</summary>
internal static class UnnamedChange
{
    /// <summary>What to ask the crew; null while there is nothing to ask.</summary>
    /// <param name="view">The session.</param>
    /// <param name="now">The present reading, good for the record; null when there is none.</param>
    public static Diagnostic? Of(SessionView view, RecordedWeighing? now)
    {
        if (now is null || view is not { Stage: SessionStage.Planning or SessionStage.Finishing, Session: { Known: not null, Weighings: [.., var last] } session }
            || now.IsSameRestAs(last.Step.Reading) || !IsWithoutName(view))
            return null;
        return Since(session, now) switch
        {
            null => null,
            { Kind: UnrecordedKind.LooksLikePerch, CrossWeightChangePercent: var change } => new(SessionCodes.ChangeUnnamed,
                $"The settled car stands at {now.CrossWeightPercent:0.00} %, {change.Estimate:+0.00;-0.00} % off its last reading; settling alone does {change.HalfWidth():0.00} % (95 %).",
                "If a perch was turned, record it now. Otherwise settle again and weigh."),
            var mass => mass.Finding,
        };
    }

    /// <summary>What changed since the last reading; null: nothing but how the car came to rest.</summary>
    public static UnrecordedChange? Since(WorkSession session, RecordedWeighing now)
    {
        var standing = Standing.Of(session)!;
        var value = standing.CrossWeightPercent.Estimate + SwitchedPatch.CrossWeightPercent(session, now);
        // One settle against the mean of those since the last adjustment.
        var oneMore = new Value(value, standing.Repeatability.Percent * Math.Sqrt(1 + 1.0 / standing.Settles), standing.Repeatability.DegreesOfFreedom);
        return UnrecordedChange.Between(session.KnownAs(now), now.ForSteps, oneMore);
    }

    // With bars connected again the next reading verifies them and speaks for itself.
    private static bool IsWithoutName(SessionView view) => !view.LastSteps.Any(c => c.Item.Key == CheckLists.BarsAgain && c.IsDone);
}
