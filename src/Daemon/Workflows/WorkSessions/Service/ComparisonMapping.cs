using ScaleLink.Daemon.Contract;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Service;

/// <summary>Two sessions beside each other in the words of the public API.</summary>
internal static class ComparisonMapping
{
    public static Wire.SessionComparison Of(SessionView first, SessionView second, SessionComparison comparison)
    {
        var wire = new Wire.SessionComparison
        {
            First = SessionMapping.Line(first),
            Second = SessionMapping.Line(second),
            FirstTurns = first.Session.TurnsSinceBaseline.ToWire(),
            SecondTurns = second.Session.TurnsSinceBaseline.ToWire(),
        };
        wire.Figures.AddRange(comparison.Figures.Select(f => new Wire.ComparedFigure
        {
            Name = f.Name,
            First = f.First?.ToWire(),
            Second = f.Second?.ToWire(),
            Difference = f.Difference?.ToWire(),
        }));
        wire.Findings.AddRange(comparison.Findings.Select(WireValues.ToWire));
        return wire;
    }
}
