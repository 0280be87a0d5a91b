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

    public static Diagnostic? Of(ProcedurePlan plan, TakenReading now, TakenReading? previous, double? emptyCounts)
    {
        var counts = plan.Before.Counts([.. now.Reading.CellCounts]);
        if (emptyCounts is { } empty && plan.Before.Kg(counts - empty) is var kg && kg > plan.Before.CapacityKg)
            return CalibrationCodes.BeyondCapacity.Because($"about {Kg(kg):0} of {Kg(plan.Before.CapacityKg):0.#}");
        if (previous is null || !previous.Step.Load.Ballast.SequenceEqual(now.Step.Load.Ballast))
            return null;

        var expected = plan.Masses.Kg(now.Step.Load) - plan.Masses.Kg(previous.Step.Load);
        if (Math.Abs(expected) < plan.Limits.SmallChangeKg)
            return Unshifted(plan, now, previous);
        var change = plan.Before.Kg(counts - plan.Before.Counts([.. previous.Reading.CellCounts]));
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

    // A load that was to go from cell to cell: the sum does not tell, the cells do.
    static Diagnostic? Unshifted(ProcedurePlan plan, TakenReading now, TakenReading previous)
    {
        if (now.Step.Spot.Length == 0 || previous.Step.Spot.Length == 0)
            return null;
        var most = now.Reading.CellCounts.Zip(previous.Reading.CellCounts, (a, b) => Math.Abs((a - b) * plan.Before.SpanKgPerCount)).Max();
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
