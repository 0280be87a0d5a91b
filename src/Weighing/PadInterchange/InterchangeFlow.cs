using System.Text.Json.Serialization;
using ScaleLink.Weighing.Calibration.Flow;

namespace ScaleLink.Weighing.PadInterchange;

/// <summary>What came of a pad interchange: the gains, or why there are none.</summary>
/// <param name="Result">Absent when refused.</param>
/// <param name="Refused">Absent when there is a result.</param>
sealed record InterchangeOutcome(InterchangeResult? Result, Diagnostic? Refused);

/// <summary>
/// The guided weighing of one car with the pads interchanged: which pad goes where next, and which weighings are good. An
/// immutable value made of the weighings alone, like <see cref="ProcedureFlow"/>.
/// </summary>
sealed record InterchangeFlow
{
    // A car that lost this share of its weight is not the car of the first weighing; departures of the pads move the total
    // by a few thousandths at most (common practice, no published source).
    const double SameTotal = 0.005;

    /// <summary>Weighings so far, in the order taken.</summary>
    public IReadOnlyList<PlacementReading> Taken { get; init; } = [];

    /// <summary>Placements that still have to be weighed, in the order of least work; empty before the first weighing too.</summary>
    [JsonIgnore]
    public IReadOnlyList<IReadOnlyList<string>> Left => Taken.Count == 0
        ? []
        : [.. InterchangeEvaluation.Placements(Taken[0].PadAt).Where(wanted => !Taken.Any(t => t.PadAt.SequenceEqual(wanted)))];

    /// <summary>True when every placement was weighed.</summary>
    [JsonIgnore]
    public bool IsComplete => Taken.Count > 0 && Left.Count == 0;

    /// <summary>Why a weighing cannot be the next one; null when it can.</summary>
    public Diagnostic? Judge(PlacementReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (Taken.Count == 0)
            return Strange(reading.PadAt.Distinct().Count() == reading.Pads.Count, "a serial number stands at two corners");
        if (IsComplete)
            return CalibrationCodes.OutOfStep.Because("all placements are weighed");
        var first = Taken[0];
        if (Strange(first.PadAt.Order().SequenceEqual(reading.PadAt.Order()), $"{Named(reading.PadAt)} instead of {Named(first.PadAt)}") is { } strange)
            return strange;
        if (!Left.Any(wanted => wanted.SequenceEqual(reading.PadAt)))
            return CalibrationCodes.PlacementsAlike.Because($"{Standing(reading.PadAt)}; next {Named(Left[0])}");
        return Recalibrated(reading) ?? Unzeroed(reading) ?? Moved(reading);
    }

    /// <summary>This with one weighing more; <see cref="Judge"/> comes first.</summary>
    public InterchangeFlow With(PlacementReading reading) => this with { Taken = [.. Taken, reading] };

    /// <summary>This without one weighing, by its number from 1; it is to be weighed again.</summary>
    public InterchangeFlow Without(int number) => this with { Taken = [.. Taken.Where((_, i) => i != number - 1)] };

    /// <summary>What the weighings come to.</summary>
    public InterchangeOutcome Outcome()
    {
        if (!IsComplete)
            return new(null, CalibrationCodes.OutOfStep.Because($"{Left.Count} placements are still missing"));
        try
        {
            return new(InterchangeEvaluation.Evaluate([.. Taken.Select(t => new PadPlacement(t.PadAt, t.LoadsKg))]), null);
        }
        catch (RefusedException refused)
        {
            return new(null, refused.Diagnostic);
        }
    }

    string Standing(IReadOnlyList<string> padAt) =>
        Taken.Index().FirstOrDefault(t => t.Item.PadAt.SequenceEqual(padAt)) is (var index, { }) ? $"the pads stand as at placement {index + 1}" : "the pads are mixed up";

    static Diagnostic? Strange(bool isGood, string why) => isGood ? null : CalibrationCodes.OtherPads.Because(why);

    Diagnostic? Recalibrated(PlacementReading reading)
    {
        var before = Taken[0].Pads.ToDictionary(p => p.Pad, p => p.Calibration);
        return reading.Pads.Where(p => before[p.Pad] != p.Calibration).Select(p => p.Pad).ToList() is { Count: > 0 } changed
            ? CalibrationCodes.CalibrationChanged.Because(string.Join(", ", changed))
            : null;
    }

    // A pad that is carried and plugged in anew does not keep its zero to the last gram.
    Diagnostic? Unzeroed(PlacementReading reading)
    {
        var since = Taken.Max(t => t.Time);
        return reading.Pads.Where(p => p.ZeroAt <= since).Select(p => p.Pad).ToList() is { Count: > 0 } stale
            ? CalibrationCodes.NotZeroedAnew.Because(string.Join(", ", stale))
            : null;
    }

    Diagnostic? Moved(PlacementReading reading)
    {
        var (first, now) = (Taken[0].LoadsKg.Sum, reading.LoadsKg.Sum);
        return Math.Abs(now - first) > SameTotal * first
            ? CalibrationCodes.CarChanged.Because($"{Kg(now):0.0} in all, {Kg(first):0.0} at the first placement")
            : null;
    }

    static string Named(IReadOnlyList<string> pads) => string.Join(", ", pads.Zip(Corners.All.ToArray(), (pad, corner) => $"{pad} at {corner}"));
}
