using ScaleLink.Measure;

namespace ScaleLink.Daemon.Work;

/// <summary>One point of the convergence trace.</summary>
/// <param name="Step">Adjustments made before it.</param>
/// <param name="CrossWeightPercent">As read.</param>
/// <param name="ExpandedPercent">Half width at 95 % of what one settle can differ by.</param>
/// <param name="PredictedPercent">Drawn before it; null where nothing was predicted.</param>
/// <param name="Label">The turns before it.</param>
public sealed record TracePoint(int Step, double CrossWeightPercent, double ExpandedPercent, Value? PredictedPercent, string Label);

/// <summary>Cross weight against adjustments, each with the prediction drawn before it.</summary>
public static class SessionTrace
{
    /// <summary>Every reading that was put on record, in order.</summary>
    public static IReadOnlyList<TracePoint> Of(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var scatter = SettleGroups.Pool(SettleGroups.Of(session.Captures), new(session.Start.Recipe.ScatterPercent, session.Start.Recipe.DegreesOfFreedom));
        var half = new Value(0, scatter.Percent, scatter.DegreesOfFreedom).HalfWidth();
        List<TracePoint> points = [];
        var step = 0;
        foreach (var capture in session.Captures)
        {
            step += capture.Adjustment is null ? 0 : 1;
            points.Add(new(step, capture.CrossWeightPercent, half, capture.Adjustment?.Predicted?.CrossWeightPercent, capture.Adjustment is { } a ? Wording.Turns(a.Turns) : capture.ChangeName));
        }

        return points;
    }
}
