using CarOnPads.Bench;
using CarOnPads.Cells;
using CarOnPads.Physics;
using ScaleLink.Daemon.Bay;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;

namespace Daemon.Tests.Workflows.Calibration.Coverage;

/// <summary>One figure as it was stated, against the simulator's truth.</summary>
/// <param name="Name">For tables.</param>
/// <param name="Error">Stated minus true.</param>
/// <param name="HalfWidth">Of the stated 95 %.</param>
internal readonly record struct StatedFigure(string Name, double Error, double HalfWidth)
{
    public bool Holds => Math.Abs(Error) <= HalfWidth;
}

/// <summary>How the pads of a bay come to their calibrations.</summary>
/// <param name="Name">For tables.</param>
/// <param name="Repetitions">From empty to full.</param>
/// <param name="Widest">What is stated may be so many times as wide as the simulator's truth requires.</param>
internal sealed record CoveragePlan(string Name, int Repetitions, double Widest)
{
    public static readonly CoveragePlan Usual = new("full plan", 3, Widest: 1.3);

    /// <summary>What is taken where it is enough. Seven points, four degrees of freedom, whose Student's factor is 2.78: who knows only them cannot state less.</summary>
    public static readonly CoveragePlan Default = new("short plan", 1, Widest: 1.5) { Loads = PlanChoice.ShortLoads, Preloads = 1 };

    /// <summary>Its few points leave seven degrees of freedom, whose Student's factor is a fifth above that of many: who knows only them cannot state less.</summary>
    public static readonly CoveragePlan Short = new("one repetition", 1, Widest: 1.5);

    public int Loads { get; init; } = LoadChoice.MostLoads;

    public int Preloads { get; init; } = 3;
}

/// <summary>
/// One bay: four pads and a car drawn with every default imperfection, calibrated with six masses of 50 kg at one temperature, used at another.
/// Between the settles somebody turns the perches. What the daemon states goes through its whole pipeline; the truth is what the simulator has on
/// the pads, mean of half a second. What a crew does not do exactly is drawn: where masses stand, what they weigh, how warm it is.
/// </summary>
internal sealed class BayTrial
{
    private const int Masses = 6;
    private const double PlacingMetres = 0.02, WarmestKelvin = 10;
    private static readonly MassSet Set = new([.. Enumerable.Range(1, Masses).Select(i => KnownMass.OfClass($"50 no. {i}", 50, WeightClass.M1))]);

    /// <summary>
    /// Figures of each settle; from the second on also the change of cross weight since the one before. Null where a calibration procedure was refused: its crew
    /// would begin again.
    /// </summary>
    public static IReadOnlyList<IReadOnlyList<StatedFigure>>? Run(CoveragePlan plan, int seed, int settles)
    {
        try
        {
            return Settles(plan, seed, settles);
        }
        catch (ProcedureRefusedException)
        {
            return null;
        }
    }

    private static IReadOnlyList<IReadOnlyList<StatedFigure>> Settles(CoveragePlan plan, int seed, int settles)
    {
        var random = new Random(seed);
        double Within(double limit) => limit * (2 * random.NextDouble() - 1);
        double Normal(double sd) => sd * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());
        var errors = Set.Masses.ToDictionary(m => m.Label, m => Within(m.ToleranceKg));
        using var bay = new CalibrationBay(
            new BayOptions { Seed = seed, Hertz = 80, Raised = true, Imperfections = Imperfections.Default(), Car = Car(Within) }, weighs: true);
        Warm(bay, 20 + Within(5));
        bay.Run(3);
        bay.Zero();
        bay.Calibrate(pad => Plan(pad, plan), Sound, massError: label => errors[label], misplaced: () => Normal(PlacingMetres));
        Warm(bay, bay.Bench.Pad(Wheel.LF).TemperatureCelsius + Within(WarmestKelvin));
        bay.Zero();
        bay.Run(bay.Bench.Rig.Jack(Enum.GetValues<Wheel>(), null) - bay.Bench.Time);
        List<Settle> taken = [];
        for (var i = 0; i < settles; i++)
        {
            if (i > 0)
                TurnPerches(bay.Bench.Rig, Within);
            taken.Add(Settle.Take(bay));
        }

        return [.. taken.Select((settle, i) => i == 0 ? settle.Figures : [.. settle.Figures, settle.ChangeSince(taken[i - 1])])];
    }

    private static CarDescription Car(Func<double, double> within) => CarFile.Heron() with
    {
        MassKg = 968 + within(120), FrontWeight = 0.52 + within(0.06), LeftSideWeight = 0.497 + within(0.02),
        WarpMm = new CornerValues(within(4), within(4), within(4), within(4)),
    };

    private static void Sound(PadChannel pad, ProcedureReport report)
    {
        if (report.Refusals.Count > 0)
            throw new ProcedureRefusedException();
    }

    private static void Warm(CalibrationBay bay, double celsius)
    {
        foreach (var wheel in Enum.GetValues<Wheel>())
            bay.Bench.Pad(wheel).Air(celsius, atOnce: true);
    }

    private static void TurnPerches(Rig rig, Func<double, double> within)
    {
        var diagonal = within(1);
        foreach (var wheel in Enum.GetValues<Wheel>())
            rig.Turn(wheel, (wheel is Wheel.LF or Wheel.RR ? diagonal : -diagonal) + within(0.1));
    }

    private static ProcedurePlan Plan(PadChannel pad, CoveragePlan plan) => new()
    {
        Before = pad.Standing.Calibration!, Corner = pad.Corner, Masses = Set, Place = CalibrationBay.Here,
        Loads = LoadChoice.Of(Set, pad.Standing.Calibration!.CapacityKg, plan.Loads), Repetitions = plan.Repetitions, Preloads = plan.Preloads, LoopApart = true,
    };

    private sealed class ProcedureRefusedException : Exception;
}
