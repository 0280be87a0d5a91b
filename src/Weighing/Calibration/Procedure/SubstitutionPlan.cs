using ScaleLink.Weighing.Calibration.Masses;

namespace ScaleLink.Weighing.Calibration.Procedure;

/// <summary>
/// Steps that carry a calibration procedure beyond the masses owned: ballast takes the place of the masses at the same reading, then the
/// masses go on top, and so on. The fit finds the ballast and its growing uncertainty from the same points.
/// Compare OIML R 76-1:2006, 3.7.3 (from memory).
/// </summary>
static class SubstitutionPlan
{
    /// <summary>The steps from the empty pad up; ballast pieces are called "ballast 1", "ballast 2" and so on.</summary>
    /// <param name="masses">The masses, all used together as the comparison load.</param>
    /// <param name="parts">Stacks of some of them for the first loads, ascending; may be empty.</param>
    /// <param name="reachKg">Load to reach.</param>
    /// <param name="capacityKg">Capacity of the pad; no step goes beyond it.</param>
    /// <exception cref="RefusedException">SL-308: the load to reach is beyond the capacity.</exception>
    public static IReadOnlyList<LoadStack> Steps(MassSet masses, IReadOnlyList<LoadStack> parts, double reachKg, double capacityKg)
    {
        ArgumentNullException.ThrowIfNull(masses);
        ArgumentNullException.ThrowIfNull(parts);
        if (reachKg > capacityKg)
            throw new RefusedException(CalibrationCodes.BeyondCapacity.Because($"{Kg(reachKg):0.#} of {Kg(capacityKg):0.#}"));

        var all = LoadStack.Of([.. masses.Masses.Select(m => m.Label)]);
        var owned = masses.Kg(all);
        List<LoadStack> steps = [LoadStack.Empty, .. parts, all];
        List<string> ballast = [];
        for (var reached = owned; reached < reachKg && reached + owned <= capacityKg; reached += owned)
        {
            ballast.Add($"ballast {ballast.Count + 1}");
            steps.Add(LoadStack.Empty.On([.. ballast]));
            steps.Add(all.On([.. ballast]));
        }
        return steps;
    }
}
