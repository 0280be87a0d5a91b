using ScaleLink.Weighing.Calibration.Masses;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>What people lift for some steps of a calibration procedure: each piece that goes on, comes off or is moved is a lift.</summary>
/// <param name="Lifts">Pieces lifted.</param>
/// <param name="Kg">Their masses together.</param>
readonly record struct PlanEffort(int Lifts, double Kg)
{
    /// <summary>For these steps, the first of them with <paramref name="standing"/> on the pad; at the end everything comes off.</summary>
    public static PlanEffort Of(MassSet masses, IEnumerable<ProcedureStep> steps, LoadStack standing)
    {
        ArgumentNullException.ThrowIfNull(masses);
        ArgumentNullException.ThrowIfNull(steps);
        var (effort, spot) = (new PlanEffort(), "");
        foreach (var step in steps)
        {
            effort = effort.With(masses, Missing(step.Load, standing)).With(masses, Missing(standing, step.Load));
            if (step.Load == standing && step.Spot != spot)
                effort = effort.With(masses, [.. standing.Masses, .. standing.Ballast]);
            (standing, spot) = (step.Load, step.Spot);
        }
        return effort.With(masses, Missing(standing, LoadStack.Empty));
    }

    /// <summary>The load as far as it can be foreseen, kg: a piece of ballast is to weigh about what the masses do.</summary>
    public static double ForeseenKg(MassSet masses, LoadStack load)
    {
        ArgumentNullException.ThrowIfNull(masses);
        ArgumentNullException.ThrowIfNull(load);
        return masses.Kg(load) + load.Ballast.Count * masses.Masses.Sum(m => m.Kg);
    }

    PlanEffort With(MassSet masses, List<string> pieces) => new(Lifts + pieces.Count,
        Kg + pieces.Sum(label => masses.Masses.FirstOrDefault(m => m.Label == label)?.Kg ?? masses.Masses.Sum(m => m.Kg)));

    static List<string> Missing(LoadStack from, LoadStack other)
    {
        var rest = other.Masses.Concat(other.Ballast).ToList();
        return [.. from.Masses.Concat(from.Ballast).Where(label => !rest.Remove(label))];
    }
}
