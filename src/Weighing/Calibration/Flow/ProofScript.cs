namespace ScaleLink.Weighing.Calibration;

/// <summary>The readings of a plan, in order.</summary>
static class ProofScript
{
    /// <summary>Times of the creep test, minutes (OIML R 60-1:2021, 5.5.1).</summary>
    public const int LateMinutes = 20, LastMinutes = 30;

    /// <summary>At once, after twenty and after thirty minutes.</summary>
    public const int CreepReadings = 3;

    public const string Middle = "in the middle";

    public static IReadOnlyList<ProofStep> Of(ProofPlan plan) => [.. Preloads(plan), .. CornerLoads(plan), .. Runs(plan), .. Creep(plan)];

    /// <summary>What changes from one load to the next, in words.</summary>
    public static string Words(ProofStep step, LoadStack before)
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

    static IEnumerable<ProofStep> Preloads(ProofPlan plan)
    {
        yield return new(ProofStage.Preload, LoadStack.Empty);
        for (var i = 1; i <= plan.Preloads; i++)
        {
            yield return new(ProofStage.Preload, plan.Loads[^1], i);
            yield return new(ProofStage.Preload, LoadStack.Empty, i, LoadingWay.Down);
        }
    }

    static IEnumerable<ProofStep> CornerLoads(ProofPlan plan)
    {
        if (plan.CornerLoad is not { } load)
            yield break;
        yield return new(ProofStage.CornerLoad, LoadStack.Empty);
        for (var cell = 1; cell <= plan.Before.CellTrim.Count; cell++)
            yield return new(ProofStage.CornerLoad, load, Spot: $"over cell {cell}");
        yield return new(ProofStage.CornerLoad, load, Spot: Middle);
    }

    static IEnumerable<ProofStep> Runs(ProofPlan plan)
    {
        for (var run = 1; run <= plan.Runs; run++)
        {
            yield return new(ProofStage.Runs, LoadStack.Empty, run);
            foreach (var load in plan.Loads)
                yield return new(ProofStage.Runs, load, run);
            if (!plan.WayDown)
                continue;
            foreach (var load in plan.Loads.Reverse().Skip(1).Append(LoadStack.Empty))
                yield return new(ProofStage.Runs, load, run, LoadingWay.Down);
        }
    }

    static IEnumerable<ProofStep> Creep(ProofPlan plan)
    {
        if (!plan.CreepTest)
            yield break;
        // A load that has stood since the last run has crept already.
        if (!plan.WayDown)
            yield return new(ProofStage.Creep, LoadStack.Empty);
        foreach (var minutes in (int[])[0, LateMinutes, LastMinutes])
            yield return new(ProofStage.Creep, plan.Loads[^1], MinutesHeld: minutes);
    }

    static List<string> Missing(LoadStack from, LoadStack other)
    {
        var rest = other.Masses.Concat(other.Ballast).ToList();
        return [.. from.Ballast.Concat(from.Masses).Where(label => !rest.Remove(label))];
    }
}
