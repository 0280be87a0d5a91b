using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;

namespace Weighing.Tests.Calibration.Coverage;

/// <summary>Share of simulated calibrations whose 95 % interval holds the truth, at one load.</summary>
/// <param name="Scenario">What was drawn.</param>
/// <param name="ShareOfCapacity">Load, as a share of the capacity.</param>
/// <param name="Covered">0 to 1.</param>
/// <param name="MedianHalfWidthKg">Median of the interval's half-width.</param>
/// <param name="Refused">Share of the sound calibration procedures that were refused, and so are not among the calibrations.</param>
sealed record CoverageFigure(string Scenario, double ShareOfCapacity, double Covered, double MedianHalfWidthKg, double Refused);

/// <summary>
/// Does the stated uncertainty hold? Calibrations by the thousand on simulated pads: first with repeatability alone, then with
/// every error of the budget drawn as the budget states it, errors that calibrations share being shared.
/// </summary>
sealed class CoverageStudy(int trials, int seed)
{
    public static readonly double[] Shares = [0.2, 0.5, 1.0];

    static readonly MassSet Exact = new([.. Enumerable.Range(1, 5).Select(i => new KnownMass($"M{i}", 90, 0, 0, "exact"))]);
    static readonly Place Shop = Place.On("workshop", 52, 80), Track = Place.On("circuit", 46.5, 900);
    const double SpanPerKelvin = 2e-5, PositionRelative = 1e-4;

    /// <summary>Repeatability alone; the interval is that of the fit alone.</summary>
    public IReadOnlyList<CoverageFigure> Noise(double bowKg, double coverage = 0.95) =>
        Noise($"noise only, bow {bowKg} kg", bowKg, coverage, BudgetTerms.Fit);

    /// <summary>Repeatability alone, on pads with a bow that it hides; the interval is that of the fit and its shape.</summary>
    public IReadOnlyList<CoverageFigure> FaintBow(double bowKg) =>
        Noise($"faint bow {bowKg} kg, fit and shape", bowKg, 0.95, BudgetTerms.Fit, BudgetTerms.Linearity);

    List<CoverageFigure> Noise(string name, double bowKg, double coverage, params string[] terms) => Study(name, coverage, random =>
    {
        var pad = new SimulatedPad(random) { BowKg = bowKg, NoiseKg = 0.02 };
        if (Procedure(pad, Exact, _ => 90) is not { } procedure)
            return null;
        pad.NoiseKg = 0;
        var zero = pad.Read(0);
        return kg => (procedure.Kg(pad.Read(kg, 0.5) - zero) - kg, new UncertaintyBudget(
            [.. procedure.Budget(kg).Terms.Where(t => terms.Contains(t.Name))]));
    });

    /// <summary>Every error of the budget. <paramref name="together"/>: masses of a lot err by the same share of their tolerance.</summary>
    public IReadOnlyList<CoverageFigure> Full(WeightClass weights, bool together) => Full($"all errors, class {weights}", Weights(weights), together);

    /// <summary>Every error of the budget, with plates that are right within one per cent.</summary>
    public IReadOnlyList<CoverageFigure> FullWithPlates(bool together) =>
        Full("all errors, plates ±1 %", new([.. Enumerable.Range(1, 20).Select(i => KnownMass.Stated($"P{i}", 20, 0.2, "plates"))]), together);

    /// <summary>
    /// Built up with ballast to four times the masses owned: repeatability of the readings and errors of the masses, the
    /// interval being that of fit and masses.
    /// </summary>
    public IReadOnlyList<CoverageFigure> Substituted() => Study("built up with ballast, class M1", 0.95, random =>
    {
        var masses = new MassSet([.. Enumerable.Range(1, 5).Select(i => KnownMass.OfClass($"20-{i}", 20, WeightClass.M1))]);
        var pad = new SimulatedPad(random) { BowKg = 0.3, NoiseKg = 0.01 };
        var errors = masses.Masses.ToDictionary(m => m.Label, m => m.Kg + pad.Within(m.ToleranceKg));
        var steps = SubstitutionPlan.Steps(masses, [LoadStack.Of("20-1", "20-2"), LoadStack.Of("20-1", "20-2", "20-3", "20-4")], 400, 450);
        var ballast = steps[^1].Ballast.ToDictionary(label => label, _ => 115 + pad.Within(1));
        if (Procedure(pad, masses, label => errors.TryGetValue(label, out var kg) ? kg : ballast[label], stacks: steps) is not { } procedure)
            return null;
        pad.NoiseKg = 0;
        var zero = pad.Read(0);
        return kg => (procedure.Kg(pad.Read(kg, 0.5) - zero) - kg, new UncertaintyBudget(
            [.. procedure.Budget(kg).Terms.Where(t => t.Name is BudgetTerms.Fit or BudgetTerms.Masses)]));
    });

    List<CoverageFigure> Full(string name, MassSet masses, bool together) => Study($"{name}, errors {(together ? "together" : "apart")}", 0.95, random =>
    {
        var pad = new SimulatedPad(random) { Rounds = true, CountsPerKg = 100, PlacingKg = 0.02 };
        pad.BowKg = pad.Within(0.3);
        pad.HysteresisKg = pad.Within(0.1);
        pad.ZeroReturnKg = pad.Within(0.04);
        double creep = pad.Within(2e-4), perKelvin = pad.Within(SpanPerKelvin), air = pad.Within(0.1 * AirBuoyancy.AirDensity / 8000);
        double shop = 1 + pad.Within(Gravity.RelativeLimit), track = 1 + pad.Within(Gravity.RelativeLimit);

        var common = pad.Within(1);
        var errors = masses.Masses.ToDictionary(m => m.Label, m => m.ToleranceKg * (together ? common : pad.Within(1)));
        pad.Sensitivity = shop * (1 + air);
        if (Procedure(pad, masses, label => masses[label].Kg + errors[label], new Creep(450, creep * 450, 0)) is not { } procedure)
            return null;

        return kg =>
        {
            // Elsewhere: other gravity, another temperature, some minutes of creep, another place on the pad.
            pad.Sensitivity = track * Track.GravityMps2 / Shop.GravityMps2
                * (1 + perKelvin * pad.Within(UseConditions.UnknownTemperatureSpanK) + creep * pad.Within(1) + pad.Within(PositionRelative));
            var zero = pad.Read(0);
            var load = procedure.Load(pad.Read(kg, random.NextDouble(), pad.Within(pad.ZeroReturnKg)), zero, new UseConditions(Track));
            return (load.Kg - kg, load.Budget);
        };
    });

    static MassSet Weights(WeightClass weights) =>
        new([.. Enumerable.Range(1, 22).Select(i => KnownMass.OfClass($"20-{i}", 20, weights)), KnownMass.OfClass("10-1", 10, weights)]);

    static PadCalibration? Procedure(SimulatedPad pad, MassSet masses, Func<string, double> trueKg, Creep? creep = null, IReadOnlyList<LoadStack>? stacks = null)
    {
        var start = PadCalibration.Starting("P1", 1.01 / pad.CountsPerKg, 0.02, 450, 1, Shop, DateTimeOffset.UnixEpoch);
        start = start with { Errors = start.Errors with { PositionRelative = PositionRelative } };
        var report = CalibrationEvaluation.Evaluate(new ProcedureInput
        {
            Before = start,
            Masses = masses,
            Points = pad.Calibrate(stacks ?? Stacks(masses), trueKg),
            Place = Shop,
            Time = DateTimeOffset.UnixEpoch,
            Creep = creep,
            SpanPerKelvin = SpanPerKelvin,
        });
        return report.Calibration;
    }

    // Six levels, the last with everything on.
    static List<LoadStack> Stacks(MassSet masses)
    {
        var labels = masses.Masses.Select(m => m.Label).ToList();
        return [.. Enumerable.Range(0, 6).Select(level => LoadStack.Of([.. labels.Take((int)Math.Round(level * labels.Count / 5.0))]))];
    }

    List<CoverageFigure> Study(string scenario, double coverage, Func<Random, Func<double, (double Error, UncertaintyBudget Budget)>?> trial)
    {
        var random = new Random(seed);
        var covered = new int[Shares.Length];
        var widths = Shares.Select(_ => new List<double>()).ToArray();
        var refused = 0;
        while (widths[0].Count < trials)
        {
            if (trial(random) is not { } ask)
            {
                refused++;
                continue;
            }
            for (var i = 0; i < Shares.Length; i++)
            {
                var (error, budget) = ask(Shares[i] * 450);
                var width = budget.Expanded(coverage);
                widths[i].Add(width);
                covered[i] += Math.Abs(error) <= width ? 1 : 0;
            }
        }
        return [.. Shares.Select((share, i) => new CoverageFigure(
            scenario, share, covered[i] / (double)trials, widths[i].Order().ElementAt(trials / 2), refused / (double)(trials + refused)))];
    }
}
