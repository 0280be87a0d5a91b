using ScaleLink.Measure;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Standings;

/// <summary>One point of the convergence trace.</summary>
/// <param name="Number">Of the weighing, as on record.</param>
/// <param name="Step">Adjustments made before it.</param>
/// <param name="CrossWeightPercent">As read.</param>
/// <param name="ExpandedPercent">Half width at 95 % of what one settle can differ by.</param>
/// <param name="PredictedPercent">Drawn before it; null where nothing was predicted.</param>
/// <param name="Label">The turns before it.</param>
internal sealed record TracePoint(int Number, int Step, double CrossWeightPercent, double ExpandedPercent, Value? PredictedPercent, string Label);

/// <summary>Cross weight against adjustments, each with the prediction drawn before it.</summary>
internal static class SessionTrace
{
    /// <summary>Every reading that was put on record, in order.</summary>
    public static IReadOnlyList<TracePoint> Of(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var repeatability = SettleGroups.Pool(SettleGroups.Of(session.Weighings), new(session.Start.SettleMethod.RepeatabilityPercent, session.Start.SettleMethod.DegreesOfFreedom));
        var half = new Value(0, repeatability.Percent, repeatability.DegreesOfFreedom).HalfWidth();
        List<TracePoint> points = [];
        var step = 0;
        foreach (var weighing in session.Weighings)
        {
            step += weighing.Adjustment is null ? 0 : 1;
            points.Add(new(weighing.Number, step, weighing.CrossWeightPercent, half, weighing.Adjustment?.Predicted?.CrossWeightPercent, weighing.Adjustment is { } a ? CrewWords.Turns(a.Turns) : weighing.ChangeName));
        }

        return points;
    }
}
