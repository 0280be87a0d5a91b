using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>The readings of a session as points of the trace.</summary>
internal static class SessionTrace
{
    public static IReadOnlyList<Settle> Of(Session session) =>
        [.. session.Trace.Select((point, k) => new Settle(k, point.CrossWeightPercent, point.ExpandedPercent, point.PredictedPercent?.Estimate))];
}
