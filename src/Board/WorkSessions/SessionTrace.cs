using ScaleLink.Api.V1;
using ScaleLink.Board.Readings;

namespace ScaleLink.Board.WorkSessions;

/// <summary>The readings of a session as points of the trace.</summary>
internal static class SessionTrace
{
    public static IReadOnlyList<Settle> Of(Session session) =>
        [.. session.Trace.Select(point => new Settle((int)point.Number, point.CrossWeightPercent, point.ExpandedPercent, point.PredictedPercent?.Estimate))];
}
