using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>One figure of two sessions; null where a session has none.</summary>
internal sealed record ComparedFigure(string Name, Value? First, Value? Second)
{
    /// <summary>Second minus first; the uncertainties of both, as if independent.</summary>
    public Value? Difference => (First, Second) is ({ } a, { } b)
        ? new Value(b.Estimate - a.Estimate, Math.Sqrt(a.Uncertainty * a.Uncertainty + b.Uncertainty * b.Uncertainty))
        : null;
}

/// <summary>Two sessions beside each other.</summary>
/// <param name="Figures">Figures by name.</param>
/// <param name="Findings">What makes them hard to compare.</param>
internal sealed record SessionComparison(IReadOnlyList<ComparedFigure> Figures, IReadOnlyList<Diagnostic> Findings)
{
    private static readonly (string Name, Func<LoadSummary, Value> Of)[] Sums =
    [
        ("total_kg", s => s.TotalKg), ("front_weight_percent", s => s.FrontWeightPercent), ("left_side_weight_percent", s => s.LeftSideWeightPercent),
        ("front_left_right_difference_kg", s => s.FrontLeftRightDifferenceKg), ("rear_left_right_difference_kg", s => s.RearLeftRightDifferenceKg),
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
        return new(figures, [.. Uncertainties(first, second)]);
    }

    private static Value? Cross(SessionWeighing? weighing) => weighing?.Step.Reading.Whole.CrossWeightPercent;

    private static Value? Last(WorkSession session, Func<LoadSummary, Value> of) => session.Weighings is [.., var last] ? of(last.Step.Reading.Whole) : null;

    private static IEnumerable<Diagnostic> Uncertainties(WorkSession first, WorkSession second)
    {
        if (first.Car.Name != second.Car.Name)
            yield return new(SessionCodes.HardToCompare, $"These are two cars: {first.Car.Name} and {second.Car.Name}.", "Compare shares, not loads.");
        else if (first.Start.CarHash != second.Start.CarHash)
            yield return new(SessionCodes.HardToCompare, "The car file was changed between the two.", "Turns and predictions rest on different rates: compare what was read.");
        if (first.Weighings is [.., var a] && second.Weighings is [.., var b] && !a.Step.Reading.Calibrations.SequenceEqual(b.Step.Reading.Calibrations))
            yield return new(SessionCodes.HardToCompare, "The pads were calibrated anew between the two.", "Changes within a session compare; loads across them by their uncertainties.");
        if (first.Start.Bay != second.Start.Bay)
            yield return new(SessionCodes.HardToCompare, $"They come from two bays: {first.Start.Bay} and {second.Start.Bay}.", "Compare by their uncertainties.");
    }
}
