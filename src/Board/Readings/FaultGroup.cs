using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>One fault and the corners that have it.</summary>
public sealed record FaultGroup(string Corners, string Code, string Message, string Mend)
{
    /// <summary>The faults of the bay: corners that share a fault share its line.</summary>
    public static IReadOnlyList<FaultGroup> Of(IEnumerable<(Corner Corner, IEnumerable<Fault> Faults)> corners) =>
    [
        .. corners.SelectMany(c => c.Faults.Select(f => (c.Corner, f.Code, f.Message, f.Mend)))
            .GroupBy(f => (f.Code, f.Message, f.Mend), f => f.Corner.Name())
            .Select(g => new FaultGroup(Words.List([.. g]), g.Key.Code, g.Key.Message, g.Key.Mend)),
    ];

    /// <summary>The faults that the loads name.</summary>
    public static IReadOnlyList<FaultGroup> Of(Loads? loads) => loads is null ? [] : Of(loads.Corners.Select(c => (c.Corner, c.Faults.AsEnumerable())));
}
