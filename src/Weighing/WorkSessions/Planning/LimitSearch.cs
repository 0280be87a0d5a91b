using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>Finds which limit keeps a plan from its targets: the one without which the plan would be clearly better.</summary>
static class LimitSearch
{
    // A limit binds when its absence halves the miss; less is rounding.
    const double Clearly = 0.5;

    public static (IReadOnlyList<Diagnostic> Findings, IReadOnlyList<PlanAlternative> Alternatives) Of(PlanProblem problem, Corners turns, CarModel car)
    {
        List<Diagnostic> findings = [];
        List<PlanAlternative> alternatives = [];
        var value = problem.Value(turns);
        foreach (var (kind, corner, freed) in Freed(problem, car))
        {
            var other = LatticeSearch.Best(freed);
            if (problem.Value(other) > Clearly * value)
                continue;
            var (limit, words) = Words(kind, corner, turns, other);
            findings.Add(new(PlanCodes.OutOfReach, limit, words));
            alternatives.Add(new(kind, corner, other, problem.After(other), words));
        }
        var crossOnly = problem.CrossWeightFirst();
        var sacrifice = LatticeSearch.Best(crossOnly);
        var (before, after) = (problem.After(turns), problem.After(sacrifice));
        if (Math.Abs(after.CrossWeightPercent) <= Clearly * Math.Abs(before.CrossWeightPercent))
            alternatives.Add(new(AlternativeKind.GiveUpRideHeight, null, sacrifice, after,
                $"Let ride heights go: cross weight then misses by {after.CrossWeightPercent:+0.00;-0.00} %, mean height by {Mm(after.MeanRideHeightMm):+0.0}, " +
                $"rake by {Mm(after.RakeMm):+0.0}, left-right height difference by {Mm(after.LeftRightDifferenceMm):+0.0}."));
        if (findings.Count == 0)
            findings.Add(new(PlanCodes.OutOfReach, "No turns bring everything within tolerance at once.",
                "Use a smaller turn or wider tolerances. Ballast will not do it: mass moves cross weight only where rates differ."));
        return (findings, alternatives);
    }

    static IEnumerable<(AlternativeKind, Corner, PlanProblem)> Freed(PlanProblem problem, CarModel car)
    {
        foreach (var corner in Corners.All.ToArray())
        {
            yield return (car.Suspension[corner].Perch.CanTurn ? AlternativeKind.MoreThread : AlternativeKind.FreePerch, corner,
                problem with { Limits = problem.Limits.FreeThread(corner) });
            if (double.IsFinite(problem.Limits.LowestRise[corner]) || double.IsFinite(problem.Limits.HighestRise[corner]))
                yield return (AlternativeKind.OtherHeightLimit, corner, problem with { Limits = problem.Limits.FreeHeight(corner) });
        }
    }

    static (string Limit, string Words) Words(AlternativeKind kind, Corner corner, Corners turns, Corners other) => kind switch
    {
        AlternativeKind.FreePerch => ($"The {corner} perch is fixed.", $"If it could turn: {CrewWords.Say(other)}."),
        AlternativeKind.MoreThread => ($"The thread at {corner} ends {Math.Abs(other[corner] - turns[corner]):0.##} turns too soon.",
            $"With more thread at {corner} (packer, spring seat or spring): {CrewWords.Say(other)}."),
        _ => ($"The ride height limit at {corner} stands in the way.", $"With another limit at {corner}: {CrewWords.Say(other)}."),
    };
}
