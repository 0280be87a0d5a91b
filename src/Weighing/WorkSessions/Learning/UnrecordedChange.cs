using ScaleLink.Weighing.Balance;

namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>A change between two settled readings that nobody wrote down.</summary>
/// <param name="Kind">What it looks like.</param>
/// <param name="CrossWeightChangePercent">Change of cross weight, percent.</param>
/// <param name="TurnsOfOnePerch">Turns of each perch that alone would do it; zero where a perch is fixed. Empty unless it looks like a perch.</param>
/// <param name="Finding">For the crew.</param>
sealed record UnrecordedChange(UnrecordedKind Kind, Value CrossWeightChangePercent, Corners? TurnsOfOnePerch, Diagnostic Finding)
{
    /// <summary>
    /// Looks at one more settled reading of a car that nobody touched. Null: nothing but the repeatability of settling, which cross
    /// weight leaves once in twenty settles (95 %, Student's t of what the repeatability rests on; JCGM 100:2008, G.3).
    /// </summary>
    /// <param name="known">What was known at the reading before, which is <see cref="StepLearner.Last"/>.</param>
    /// <param name="now">The reading.</param>
    /// <param name="expected">Cross weight of one more settle, percent: the mean of those before, and how far one settle lies from it.</param>
    public static UnrecordedChange? Between(StepLearner known, LoadSummary now, Value expected)
    {
        var before = known.Last;
        var change = now.Loads - before.Loads;
        var cross = expected with { Estimate = now.CrossWeightPercent.Estimate - expected.Estimate };
        if (Stands(change, before, now, Corners.Same(1)))
            return new(UnrecordedKind.MassChanged, cross, null, new(SessionCodes.UnrecordedChange, $"The total changed by {Kg(change.Sum):+0.0} and no step says why.",
                "Record what went in or out, or take it back out."));
        if (Stands(change, before, now, Shares.Front))
            return new(UnrecordedKind.MassMovedOrPatch, cross, null, new(SessionCodes.UnrecordedChange,
                $"{Kg(Shares.Front.Dot(change)):+0.0} moved to the front axle at the same total.", "Look for ballast that was moved, or a pad that is no longer level."));
        if (Math.Abs(cross.Estimate) <= cross.HalfWidth())
            return null;
        var perTurn = 100 / known.Effects.Statics.TotalKg * (known.Effects.LoadsPerTurn.Transposed * Shares.CrossWeight);
        var turns = Corners.From(c => known.Effects.Statics.Car.Suspension[c].Perch.CanTurn ? cross.Estimate / perTurn[c] : 0);
        return new(UnrecordedKind.LooksLikePerch, cross, turns, new(SessionCodes.UnrecordedChange,
            $"Cross weight changed by {cross.Estimate:+0.00;-0.00} % in the pattern of a turned perch and no step was recorded.",
            $"Record the turn if one was made ({string.Join(", ", Candidates(turns))}); otherwise check bars and tyre pressures."));
    }

    // Of sums of loads, which settling hardly moves: one false alarm in a thousand.
    const double Alarm = 3.3;

    static IEnumerable<string> Candidates(Corners turns) =>
        Corners.All.ToArray().Where(c => turns[c] != 0).Select(c => $"{c} {(turns[c] > 0 ? "up" : "down")} {Math.Abs(turns[c]):F1}");

    // Repositioning on the pads moves a few hundred grams; less than that is not news.
    static bool Stands(Corners change, LoadSummary before, LoadSummary now, Corners pattern) =>
        Math.Abs(pattern.Dot(change)) > Alarm * Math.Sqrt(before.Covariance.VarianceOf(pattern) + now.Covariance.VarianceOf(pattern) + 0.3 * 0.3);
}
