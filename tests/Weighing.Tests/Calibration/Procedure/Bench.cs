using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;
using Weighing.Tests.Calibration.Coverage;

namespace Weighing.Tests.Calibration.Procedure;

/// <summary>A workshop with masses of unequal size, so that mistakes with them can be told apart.</summary>
static class Bench
{
    public static readonly Place Shop = Place.On("workshop", 52, 80);

    public static readonly MassSet Masses = new(
    [
        KnownMass.OfClass("20 A", 20, WeightClass.M1), KnownMass.OfClass("50 A", 50, WeightClass.M1),
        KnownMass.OfClass("50 B", 50, WeightClass.M1), KnownMass.OfClass("10 A", 10, WeightClass.M1),
        KnownMass.OfClass("50 C", 50, WeightClass.M1), KnownMass.OfClass("20 B", 20, WeightClass.M1),
    ]);

    public static readonly LoadStack[] Stacks =
    [
        .. Enumerable.Range(0, Masses.Masses.Count + 1).Select(n => LoadStack.Of([.. Masses.Masses.Take(n).Select(m => m.Label)])),
    ];

    public static PadCalibration Start { get; } =
        PadCalibration.Starting("P1", 1 / 400.0, 0.02, 450, 1, Shop, DateTimeOffset.UnixEpoch);

    public static SimulatedPad Pad(int seed = 1) => new(new Random(seed)) { NoiseKg = 0.01, HysteresisKg = 0.03 };

    public static double TrueKg(string label) => Masses[label].Kg;

    public static ProcedureInput Input(IReadOnlyList<ProcedurePoint> points, MassSet? masses = null) => new()
    {
        Before = Start,
        Masses = masses ?? Masses,
        Points = points,
        Place = Shop,
        Time = DateTimeOffset.UnixEpoch.AddDays(1),
        Who = "tester",
    };

    public static PadCalibration Calibrated(SimulatedPad pad) =>
        CalibrationEvaluation.Evaluate(Input(pad.Calibrate(Stacks, TrueKg))).Calibration ?? throw new InvalidOperationException("A sound calibration procedure was refused.");
}
