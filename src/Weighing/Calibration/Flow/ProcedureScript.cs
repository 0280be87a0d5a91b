using ScaleLink.Weighing.Calibration.Masses;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>The readings of a plan, in order.</summary>
static class ProcedureScript
{
    /// <summary>Times of the creep test, minutes (OIML R 60-1:2021, 5.5.1).</summary>
    public const int LateMinutes = 20, LastMinutes = 30;

    /// <summary>At once, after twenty and after thirty minutes.</summary>
    public const int CreepReadings = 3;

    public const string Middle = "in the middle";

    public static IReadOnlyList<ProcedureStep> Of(ProcedurePlan plan) => [.. Preloads(plan), .. CornerLoads(plan), .. Repetitions(plan), .. Creep(plan)];

    /// <summary>What changes from one load to the next, in words.</summary>
    public static string Words(ProcedureStep step, LoadStack before)
    {
        List<string> added = Missing(step.Load, before), taken = Missing(before, step.Load);
        var doing = (added.Count, taken.Count) switch
        {
            (0, 0) when step.MinutesHeld is > 0 and var minutes => $"leave the load alone until {minutes} minutes have passed",
            (0, 0) when step.Load.IsEmpty => "leave the pad empty",
            (0, 0) when step.Spot.Length > 0 => "move the load",
            (0, 0) => "leave the load as it is",
            (0, _) when step.Load.IsEmpty => "take everything off",
            (0, _) => $"take off {string.Join(" + ", taken)}",
            (_, 0) => $"put on {string.Join(" + ", added)}",
            _ => $"take off {string.Join(" + ", taken)}, put on {string.Join(" + ", added)}",
        };
        return step.Spot.Length > 0 ? $"{doing}, {step.Spot}" : doing;
    }

    static IEnumerable<ProcedureStep> Preloads(ProcedurePlan plan)
    {
        yield return new(ProcedureStage.Preload, LoadStack.Empty);
        for (var i = 1; i <= plan.Preloads; i++)
        {
            yield return new(ProcedureStage.Preload, plan.Loads[^1], i);
            yield return new(ProcedureStage.Preload, LoadStack.Empty, i, LoadingWay.Down);
        }
    }

    static IEnumerable<ProcedureStep> CornerLoads(ProcedurePlan plan)
    {
        if (plan.CornerLoad is not { } load)
            yield break;
        yield return new(ProcedureStage.CornerLoad, LoadStack.Empty);
        for (var cell = 1; cell <= plan.Before.CellTrim.Count; cell++)
            yield return new(ProcedureStage.CornerLoad, load, Spot: $"over cell {cell}");
        yield return new(ProcedureStage.CornerLoad, load, Spot: Middle);
    }

    static IEnumerable<ProcedureStep> Repetitions(ProcedurePlan plan)
    {
        for (var repetition = 1; repetition <= plan.Repetitions; repetition++)
        {
            yield return new(ProcedureStage.Repetitions, LoadStack.Empty, repetition);
            foreach (var load in plan.Loads)
                yield return new(ProcedureStage.Repetitions, load, repetition);
            if (!plan.WayDown)
                continue;
            foreach (var load in plan.Loads.Reverse().Skip(1).Append(LoadStack.Empty))
                yield return new(ProcedureStage.Repetitions, load, repetition, LoadingWay.Down);
        }
    }

    static IEnumerable<ProcedureStep> Creep(ProcedurePlan plan)
    {
        if (!plan.CreepTest)
            yield break;
        // A load that has stood since the last repetition has crept already.
        if (!plan.WayDown)
            yield return new(ProcedureStage.Creep, LoadStack.Empty);
        foreach (var minutes in (int[])[0, LateMinutes, LastMinutes])
            yield return new(ProcedureStage.Creep, plan.Loads[^1], MinutesHeld: minutes);
    }

    static List<string> Missing(LoadStack from, LoadStack other)
    {
        var rest = other.Masses.Concat(other.Ballast).ToList();
        return [.. from.Ballast.Concat(from.Masses).Where(label => !rest.Remove(label))];
    }
}
