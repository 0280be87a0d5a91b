using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;

namespace Weighing.Tests.Cars;

/// <summary>The invented two-seater that the tests weigh: 1 048 kg with driver.</summary>
static class Heron
{
    public const double TotalKg = 1048;

    /// <summary>Loads near 52 % cross weight and 53 % front.</summary>
    public static readonly Corners Loads = new(268.0, 288.0, 257.0, 235.0);

    public static CarModel Car { get; } = new()
    {
        Name = "Heron",
        WheelbaseMm = new(2450, 3),
        FrontTrackMm = new(1500, 3),
        RearTrackMm = new(1480, 3),
        Suspension = new(Front, Front, Rear, Rear),
        FrontBar = new(Stated.Within(18, 0.1), Connected: false),
        RearBar = new(Stated.Within(9, 0.1), Connected: false),
        CgHeightMm = new(430, 20),
        RollAxisHeightMm = new(40, 30),
        SmallestTurn = 0.25,
        BallastStations = [new("passenger floor", new(1300, -380, 150), 0, 40), new("battery box", new(3000, 420, 250), 5, 25)],
    };

    static CornerSetup Front => Setup(70, 0.90);

    static CornerSetup Rear => Setup(62, 0.85);

    static CornerSetup Setup(double springRate, double motionRatio) => new()
    {
        SpringRateNPerMm = Stated.Within(springRate, 0.05),
        MotionRatio = Stated.Within(motionRatio, 0.02),
        TyreRateNPerMm = Stated.Within(220, 0.1),
        Perch = new() { PitchMmPerTurn = Stated.Exactly(2.0), UpTurnsLeft = 8, DownTurnsLeft = 8 },
    };
}
