using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;

namespace Weighing.Tests.Cars;

/// <summary>A car simple enough for closed forms: no bars, a centre of gravity that does not swing.</summary>
static class PlainCar
{
    /// <param name="springs">Spring rates, N/mm, at motion ratio one.</param>
    /// <param name="tyre">Rate of every tyre, N/mm.</param>
    /// <param name="frontTrack">mm.</param>
    /// <param name="rearTrack">mm.</param>
    /// <param name="wheelbase">mm.</param>
    /// <param name="cgHeight">mm; the roll axis lies at the same height, so nothing swings.</param>
    public static CarModel With(Corners springs, double tyre = 200, double frontTrack = 1500, double rearTrack = 1500, double wheelbase = 2400, double cgHeight = 0) => new()
    {
        Name = "plain",
        WheelbaseMm = Stated.Exactly(wheelbase),
        FrontTrackMm = Stated.Exactly(frontTrack),
        RearTrackMm = Stated.Exactly(rearTrack),
        Suspension = new(Setup(springs.LF, tyre), Setup(springs.RF, tyre), Setup(springs.LR, tyre), Setup(springs.RR, tyre)),
        CgHeightMm = Stated.Exactly(cgHeight),
        RollAxisHeightMm = Stated.Exactly(cgHeight),
        SmallestTurn = 0.125,
    };

    static CornerSetup Setup(double spring, double tyre) => new()
    {
        SpringRateNPerMm = Stated.Exactly(spring),
        MotionRatio = Stated.Exactly(1),
        TyreRateNPerMm = Stated.Exactly(tyre),
        Perch = new() { PitchMmPerTurn = Stated.Exactly(2), UpTurnsLeft = 10, DownTurnsLeft = 10 },
    };
}
