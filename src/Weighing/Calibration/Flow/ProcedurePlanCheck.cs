using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Calibration.Trim;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>Finds every mistake of a plan before anybody lifts a mass.</summary>
static class ProcedurePlanCheck
{
    /// <summary>All of them; empty when the plan is good.</summary>
    public static IReadOnlyList<Diagnostic> Of(ProcedurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var unknown = plan.Loads.Append(plan.CornerLoad ?? LoadStack.Empty).Where(load => !plan.Masses.Knows(load)).ToList();
        if (unknown.Count > 0)
            return [.. unknown.Select(load => CalibrationCodes.MassUnknown.Because(load.ToString()))];
        List<Diagnostic> mistakes = [.. Capacity(plan), .. Order(plan), .. Amount(plan), .. Masses(plan)];
        return mistakes.Count > 0 ? mistakes : [.. Fit(plan)];
    }

    static IEnumerable<Diagnostic> Capacity(ProcedurePlan plan)
    {
        var capacity = plan.Before.CapacityKg;
        foreach (var load in plan.Loads.Where(load => plan.Masses.Kg(load) > capacity))
            yield return CalibrationCodes.BeyondCapacity.Because($"{load} is {Kg(plan.Masses.Kg(load)):0.#}, capacity {Kg(capacity):0.#}");
        var cells = plan.Before.CellTrim.Count;
        if (plan.CornerLoad is { } corner && plan.Masses.Kg(corner) is var kg && kg > CornerLoadTest.TestLoadKg(capacity, cells))
            yield return CalibrationCodes.BeyondCapacity.Because(
                $"the corner-load mass is {Kg(kg):0.#}, over one cell at most {Kg(CornerLoadTest.TestLoadKg(capacity, cells)):0.#} is right");
    }

    static IEnumerable<Diagnostic> Order(ProcedurePlan plan)
    {
        foreach (var load in plan.Loads.GroupBy(l => l).Where(g => g.Count() > 1 || g.Key.IsEmpty))
            yield return CalibrationCodes.LoadUnchanged.Because($"{load.Key} stands in the plan more than once, or is empty");
        // What ballast weighs is not known yet, so steps with different ballast are not compared.
        foreach (var (before, after) in plan.Loads.Zip(plan.Loads.Skip(1)))
            if (before.Ballast.SequenceEqual(after.Ballast) && plan.Masses.Kg(after) <= plan.Masses.Kg(before))
                yield return CalibrationCodes.NotMonotonic.Because($"{after} is planned after {before} and is not heavier");
    }

    static IEnumerable<Diagnostic> Amount(ProcedurePlan plan)
    {
        if (plan.Repetitions < 1 || plan.Preloads < 0)
            yield return CalibrationCodes.TooFewPoints.Because($"{plan.Repetitions} repetitions, {plan.Preloads} preloads");
        if (plan.Loads.Distinct().Count() < 2)
            yield return CalibrationCodes.TooFewPoints.Because($"{plan.Loads.Count} loads; plan at least 2 besides the empty pad, 5 to see a curve");
        var (highest, capacity) = (ForeseenCalibration.HighestKg(plan), plan.Before.CapacityKg);
        if (highest < CalibrationEvaluation.LeastRange * capacity)
            yield return CalibrationCodes.RangeTooShort.Because($"up to {Kg(highest):0.#} of {Kg(capacity):0.#}; at least {CalibrationEvaluation.LeastRange:P0} is needed");
        else if (plan.Asked is { } asked && asked.AtKg > highest * (1 + PadLoad.RangeMargin))
            yield return CalibrationCodes.RangeTooShort.Because($"something is asked at {Kg(asked.AtKg):0.#}, the masses reach {Kg(highest):0.#}");
        if (plan.Before.HasSensitivity && Math.Abs(highest / plan.Before.SpanKgPerCount) is var counts && counts < CalibrationEvaluation.LeastSteps * plan.ResolutionCounts)
            yield return CalibrationCodes.SignalTooSmall.Because(
                $"{Kg(highest):0.#} make about {counts:0} counts, {CalibrationEvaluation.LeastSteps * plan.ResolutionCounts:0} are needed");
    }

    static IEnumerable<Diagnostic> Masses(ProcedurePlan plan)
    {
        if (plan.Asked is not { } asked || plan.Loads.Count == 0)
            yield break;
        // Masses alone, were those of a lot to err together, already set a floor that no number of repetitions gets under.
        var heaviest = plan.Loads.MaxBy(plan.Masses.Kg)!;
        var relative = Math.Sqrt(heaviest.Masses.Select(label => plan.Masses[label]).GroupBy(m => m.Lot)
            .Sum(lot => Math.Pow(lot.Sum(m => m.StandardUncertaintyKg), 2))) / plan.Masses.Kg(heaviest);
        var floor = Coverage.Factor(probability: asked.Coverage) * relative * asked.AtKg;
        if (floor > asked.ExpandedKg)
            yield return CalibrationCodes.UncertaintyNotReached.Because(
                $"the masses alone leave ±{Kg(floor):0.000} at {Kg(asked.AtKg):0.#}, ±{Kg(asked.ExpandedKg):0.000} asked");
    }

    // What can be said before any reading: that the points suffice, and what even a perfect pad leaves uncertain.
    static IEnumerable<Diagnostic> Fit(ProcedurePlan plan)
    {
        if (Foreseen(plan, out var best) is { } never)
            yield return never;
        else if (plan.Asked is { } asked && best!.Budget(asked.AtKg) is var budget && budget.Expanded(asked.Coverage) is var floor && floor > asked.ExpandedKg)
            yield return CalibrationCodes.UncertaintyNotReached.Because(
                $"the masses and what is usual for a pad leave ±{Kg(floor):0.000} at {Kg(asked.AtKg):0.#}, ±{Kg(asked.ExpandedKg):0.000} asked; largest term {budget.Largest.Name}, {Kg(budget.Largest.StandardUncertainty):0.000}");
    }

    static Diagnostic? Foreseen(ProcedurePlan plan, out PadCalibration? best)
    {
        try
        {
            best = ForeseenCalibration.Best(plan);
            return null;
        }
        catch (RefusedException refused)
        {
            best = null;
            return refused.Diagnostic;
        }
    }
}
