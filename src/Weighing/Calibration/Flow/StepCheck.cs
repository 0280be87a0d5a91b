using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>Whether a reading looks like the load that its step asks for, by the calibration in effect.</summary>
static class StepCheck
{
    const double KgPerLb = 0.45359237;

    // A load over another cell changes some cell by a good part of itself.
    const double UnshiftedShare = 0.05;

    // So near to the sum of some of the masses, a load is taken for them.
    const double PartShare = 0.05;

    // A pad that moves by less than this share of what was to come has not been loaded.
    const double Unmoved = 0.2;

    // A load moves a pad by many times what a reading spreads.
    const double SpreadsMoved = 5;

    /// <summary>Why the reading does not fit its step; null when it does.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="now">The reading.</param>
    /// <param name="previous">The one before; null for the first.</param>
    /// <param name="scale">What turns counts into kilograms; null while nobody knows.</param>
    /// <param name="empty">The last empty reading; null before the first.</param>
    public static Diagnostic? Of(ProcedurePlan plan, TakenReading now, TakenReading? previous, PadCalibration? scale, PadReading? empty)
    {
        if (scale is null)
            return Unmoving(plan, now, previous);
        var counts = scale.Counts([.. now.Reading.CellCounts]);
        if (empty is not null && scale.Kg(counts - scale.Counts([.. empty.CellCounts])) is var kg && kg > scale.CapacityKg)
            return CalibrationCodes.BeyondCapacity.Because($"about {Kg(kg):0} of {Kg(scale.CapacityKg):0.#}");
        if (previous is null || !previous.Step.Load.Ballast.SequenceEqual(now.Step.Load.Ballast))
            return null;

        var expected = plan.Masses.Kg(now.Step.Load) - plan.Masses.Kg(previous.Step.Load);
        if (Math.Abs(expected) < plan.Limits.SmallChangeKg)
            return Unshifted(plan, now, previous, scale);
        var change = scale.Kg(counts - scale.Counts([.. previous.Reading.CellCounts]));
        var ratio = change / expected;
        return ratio switch
        {
            > -Unmoved and < Unmoved => Elsewhere(plan.Corner, now.Reading, previous.Reading, expected)
                ?? CalibrationCodes.LoadUnchanged.Because($"{Kg(expected):+0.#} was to come, {Kg(change):+0.0} came"),
            < 0 => CalibrationCodes.NotMonotonic.Because($"{Kg(expected):+0.#} was to come, {Kg(change):+0.0} came"),
            _ when IsPart(plan, now.Step.Load, previous.Step.Load, change) => CalibrationCodes.UnexpectedLoad.Because(
                $"{Kg(expected):+0.#} was to come, about {Kg(change):+0.0} came, as if some of the masses had not been moved"),
            _ when Near(ratio, KgPerLb) || Near(ratio, 1 / KgPerLb) => CalibrationCodes.WrongUnit.Because(
                $"{Kg(expected):+0.#} was to come, {Kg(change):+0.0} came, {(ratio < 1 ? "as if marked in pounds" : "as if converted from pounds twice")}"),
            _ when Math.Abs(ratio - 1) > plan.Limits.LoadShare => CalibrationCodes.UnexpectedLoad.Because(
                $"{Kg(expected):+0.#} was to come, about {Kg(change):+0.0} came"),
            _ => null,
        };
    }

    // How much has come nobody can tell yet; that something has, the spread of the readings tells.
    static Diagnostic? Unmoving(ProcedurePlan plan, TakenReading now, TakenReading? previous)
    {
        if (previous is null || previous.Step.Load == now.Step.Load)
            return null;
        var moved = Math.Abs(plan.Before.Counts([.. now.Reading.CellCounts]) - plan.Before.Counts([.. previous.Reading.CellCounts]));
        return moved <= SpreadsMoved * (now.Reading.CellSpreads.Sum() + previous.Reading.CellSpreads.Sum() + plan.ResolutionCounts)
            ? CalibrationCodes.LoadUnchanged.Because($"{Kg(plan.Masses.Kg(now.Step.Load) - plan.Masses.Kg(previous.Step.Load)):+0.#} was to come, {moved:0} counts came")
            : null;
    }

    // A load that was to go from cell to cell: the sum does not tell, the cells do.
    static Diagnostic? Unshifted(ProcedurePlan plan, TakenReading now, TakenReading previous, PadCalibration scale)
    {
        if (now.Step.Spot.Length == 0 || previous.Step.Spot.Length == 0)
            return null;
        var most = now.Reading.CellCounts.Zip(previous.Reading.CellCounts, (a, b) => Math.Abs((a - b) * scale.SpanKgPerCount)).Max();
        return most < UnshiftedShare * plan.Masses.Kg(now.Step.Load)
            ? CalibrationCodes.LoadUnchanged.Because($"it stands where it stood, no cell changed by more than {Kg(most):0.0}")
            : null;
    }

    // Half of a stack that is still being carried weighs about what the whole would in pounds; the likelier is said.
    static bool IsPart(ProcedurePlan plan, LoadStack now, LoadStack before, double change)
    {
        List<string> more = Missing(now, before), less = Missing(before, now);
        if (more.Count > 0 && less.Count > 0)
            return false;
        List<double> masses = [.. more.Concat(less).Select(label => plan.Masses[label].Kg)];
        HashSet<double> sums = [0];
        // To half a kilogram, so that many unlike masses do not make millions of sums.
        foreach (var kg in masses)
            sums.UnionWith(sums.Select(sum => Math.Round(2 * (sum + kg)) / 2).ToList());
        return sums.Any(sum => sum > 0 && sum < masses.Sum() - 0.5 && Math.Abs(Math.Abs(change) / sum - 1) < PartShare);
    }

    static List<string> Missing(LoadStack from, LoadStack other)
    {
        var rest = other.Masses.ToList();
        return [.. from.Masses.Where(label => !rest.Remove(label))];
    }

    static Diagnostic? Elsewhere(Corner own, PadReading now, PadReading previous, double expected)
    {
        if (now.BayLoadsKg is not { } loads || previous.BayLoadsKg is not { } before)
            return null;
        var changes = loads - before;
        foreach (var corner in Corners.All)
            if (corner != own && Math.Abs(changes[corner] / expected - 1) < 0.5)
                return CalibrationCodes.MassesOnOtherPad.Because($"{Kg(changes[corner]):+0.0} came on {corner}, the calibration procedure is of {own}");
        return null;
    }

    static bool Near(double ratio, double expected) => Math.Abs(ratio / expected - 1) < 0.1;
}
