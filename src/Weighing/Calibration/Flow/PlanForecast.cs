using ScaleLink.Weighing.Calibration.Results;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>What a plan costs and brings, before the first mass is lifted.</summary>
/// <param name="Steps">Readings.</param>
/// <param name="Loads">Different loads, the empty pad left out.</param>
/// <param name="HighestKg">Highest of them.</param>
/// <param name="Effort">What is lifted in all.</param>
/// <param name="Foreseen">Load and expanded uncertainty (95 %) there, kg: parts of the highest load, and the load that something is asked at.</param>
sealed record PlanForecast(int Steps, int Loads, double HighestKg, PlanEffort Effort, IReadOnlyList<AtLoad> Foreseen)
{
    const int Parts = 4;

    /// <summary>Of a plan that <see cref="ProcedurePlanCheck"/> finds good.</summary>
    public static PlanForecast Of(ProcedurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (script, calibration) = (ProcedureScript.Of(plan), ForeseenCalibration.Of(plan));
        var highest = calibration.CalibratedToKg;
        var loads = Enumerable.Range(1, Parts).Select(i => highest * i / Parts).Concat(plan.Asked is { AtKg: > 0 } asked ? [asked.AtKg] : []).Distinct().Order();
        return new PlanForecast(script.Count, plan.Loads.Count, highest, PlanEffort.Of(plan.Masses, script, Masses.LoadStack.Empty),
            [.. loads.Select(kg => new AtLoad(calibration.Budget(kg).Expanded(), kg))]);
    }

    /// <summary>Foreseen at the highest load, kg.</summary>
    public double AtHighestKg => Foreseen.Single(f => f.LoadKg == HighestKg).Kg;

    /// <summary>For people.</summary>
    public Sentence Words => $"{Loads} loads to {Kg(HighestKg):0.#} in {Steps} steps: {Effort.Lifts} lifts, on and off, {Kg(Effort.Kg):0} in all. Foreseen: {Uncertain}";

    Sentence Uncertain => Sentence.Join(", ", Foreseen.Where((f, i) => f.LoadKg == HighestKg || i % 2 == 1).Reverse().Select(f => (Sentence)$"±{Kg(f.Kg):0.00} (95 %) at {Kg(f.LoadKg):0.#}"));
}
