using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Pads;
using Weighing.Tests.Calibration.Coverage;

namespace Weighing.Tests.Calibration.Flow;

/// <summary>A person who calibrates a pad: puts on what the flow asks for and reads, on a pad of two cells with known gains.</summary>
sealed class ProcedureWalk
{
    static readonly double[] Gains = [1.02, 0.98];
    readonly SimulatedPad _pad = new(new Random(3)) { NoiseKg = 0.005, ZeroCounts = 20_000, CountsPerKg = 400, CapacityKg = 450 };

    public static ProcedurePlan Plan => new()
    {
        Before = PadCalibration.Starting("P1", 1 / 400.0, 0.02, 450, 2, Place.On("workshop", 52, 80), DateTimeOffset.UnixEpoch),
        Corner = Corner.RF,
        Masses = Procedure.Bench.Masses,
        Loads = Procedure.Bench.Stacks[1..],
        Place = Place.On("workshop", 52, 80),
        CornerLoad = LoadStack.Of("50 A", "50 B"),
        CreepTest = true,
        EmptyCounts = (Gains[0] + Gains[1]) * 20_000,
    };

    public ProcedureFlow Flow { get; set; } = ProcedureFlow.Begin(Plan);

    public DateTimeOffset Now { get; set; } = new(2031, 3, 1, 8, 0, 0, TimeSpan.Zero);

    /// <summary>What the pad would read with the step's load, or another, on it.</summary>
    public PadReading Read(double? kg = null)
    {
        var step = Flow.Next!.Step;
        Now += TimeSpan.FromMinutes(step.MinutesHeld > 0 ? 21 : 1);
        var load = kg ?? Flow.Plan.Masses.Kg(step.Load);
        var first = step.Spot switch { "over cell 1" => 0.9, "over cell 2" => 0.1, _ => 0.5 };
        return new PadReading
        {
            Time = Now,
            CellCounts = [Gains[0] * (_pad.Read(first * load)), Gains[1] * (_pad.Read((1 - first) * load))],
            CellSpreads = [5, 6],
            Settled = true,
            TemperatureC = 19,
            BayLoadsKg = new Corners(0, load, 0, 0),
        };
    }

    public IReadOnlyList<Diagnostic> Offer(PadReading reading)
    {
        var answer = Flow.Take(reading);
        Flow = answer.Flow;
        return answer.Refusals;
    }

    /// <summary>Goes on, step by step, as long as <paramref name="on"/> says so.</summary>
    public ProcedureWalk While(Func<ProcedureFlow, bool> on)
    {
        while (Flow.Next is not null && on(Flow))
            Assert.Empty(Offer(Read()));
        return this;
    }

    /// <summary>To the first step of a repetition that carries so many masses.</summary>
    public static ProcedureWalk To(int masses) => new ProcedureWalk()
        .While(f => f.Stage != ProcedureStage.Repetitions || f.Next!.Step.Load.Masses.Count < masses);
}
