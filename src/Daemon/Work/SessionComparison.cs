using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;

namespace ScaleLink.Daemon.Work;

/// <summary>One figure of two sessions; null where a session has none.</summary>
public sealed record ComparedFigure(string Name, Value? First, Value? Second)
{
    /// <summary>Second minus first; the doubts of both, as if independent.</summary>
    public Value? Difference => (First, Second) is ({ } a, { } b)
        ? new Value(b.Estimate - a.Estimate, Math.Sqrt(a.Uncertainty * a.Uncertainty + b.Uncertainty * b.Uncertainty))
        : null;
}

/// <summary>Two sessions beside each other.</summary>
/// <param name="Figures">Figures by name.</param>
/// <param name="Findings">What makes them hard to compare.</param>
public sealed record SessionComparison(IReadOnlyList<ComparedFigure> Figures, IReadOnlyList<Diagnostic> Findings)
{
    private static readonly (string Name, Func<LoadSummary, Value> Of)[] Sums =
    [
        ("total_kg", s => s.TotalKg), ("front_share_percent", s => s.FrontSharePercent), ("left_share_percent", s => s.LeftSharePercent),
        ("front_side_difference_kg", s => s.FrontSideDifferenceKg), ("rear_side_difference_kg", s => s.RearSideDifferenceKg),
    ];

    /// <summary>Compares two sessions; they need not be of one car.</summary>
    public static SessionComparison Of(WorkSession first, WorkSession second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        List<ComparedFigure> figures =
        [
            new("baseline_cross_weight_percent", Cross(first.Baseline), Cross(second.Baseline)),
            new("standing_cross_weight_percent", Standing.Of(first)?.CrossWeightPercent, Standing.Of(second)?.CrossWeightPercent),
            .. Sums.Select(s => new ComparedFigure(s.Name, Last(first, s.Of), Last(second, s.Of))),
        ];
        return new(figures, [.. Doubts(first, second)]);
    }

    private static Value? Cross(SessionCapture? capture) => capture?.Step.Reading.Whole.CrossWeightPercent;

    private static Value? Last(WorkSession session, Func<LoadSummary, Value> of) => session.Captures is [.., var last] ? of(last.Step.Reading.Whole) : null;

    private static IEnumerable<Diagnostic> Doubts(WorkSession first, WorkSession second)
    {
        if (first.Car.Name != second.Car.Name)
            yield return new(SessionCodes.HardToCompare, $"These are two cars: {first.Car.Name} and {second.Car.Name}.", "Compare shares, not loads.");
        else if (first.Start.CarHash != second.Start.CarHash)
            yield return new(SessionCodes.HardToCompare, "The car file was changed between the two.", "Turns and predictions rest on different rates: compare what was read.");
        if (first.Captures is [.., var a] && second.Captures is [.., var b] && !a.Step.Reading.Calibrations.SequenceEqual(b.Step.Reading.Calibrations))
            yield return new(SessionCodes.HardToCompare, "The pads were calibrated anew between the two.", "Changes within a session compare; loads across them by their uncertainties.");
        if (first.Start.Bay != second.Start.Bay)
            yield return new(SessionCodes.HardToCompare, $"They come from two bays: {first.Start.Bay} and {second.Start.Bay}.", "Compare by their uncertainties.");
    }
}
