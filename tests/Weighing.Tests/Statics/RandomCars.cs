using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;

namespace Weighing.Tests.Statics;

/// <summary>Cars of every kind the workshop may meet, and the model a crew would state that knew each exactly.</summary>
static class RandomCars
{
    public static EnergyCar Next(Random random, bool bars)
    {
        double U(double low, double high) => low + (high - low) * random.NextDouble();
        var wheelbase = U(2200, 2800);
        var front = U(30, 120);
        var rear = U(30, 120);
        var sprung = U(650, 1250);
        return new()
        {
            Wheelbase = wheelbase,
            FrontTrack = U(1350, 1650),
            RearTrack = U(1350, 1650),
            SpringRate = new(front * U(.95, 1.05), front * U(.95, 1.05), rear * U(.95, 1.05), rear * U(.95, 1.05)),
            MotionRatio = Corners.From(_ => U(0.7, 1)),
            TyreRate = Corners.From(_ => U(180, 260)),
            PerchPitch = Corners.From(_ => U(1.5, 2)),
            FreeLength = Corners.From(_ => U(-3, 3)),
            UnsprungKg = Corners.From(_ => U(28, 42)),
            FrontBar = bars ? U(5, 30) : 0,
            RearBar = bars ? U(0, 20) : 0,
            RollAxisHeight = U(0, 100),
            Sprung = [(sprung, -wheelbase * U(.42, .58), U(-40, 40), U(250, 450))],
        };
    }

    public static CarModel ModelOf(EnergyCar car) => new()
    {
        Name = "drawn",
        WheelbaseMm = Stated.Exactly(car.Wheelbase),
        FrontTrackMm = Stated.Exactly(car.FrontTrack),
        RearTrackMm = Stated.Exactly(car.RearTrack),
        Suspension = new(Setup(car, Corner.LF), Setup(car, Corner.RF), Setup(car, Corner.LR), Setup(car, Corner.RR)),
        FrontBar = new(Stated.Exactly(car.FrontBar), Connected: car.FrontBar > 0),
        RearBar = new(Stated.Exactly(car.RearBar), Connected: car.RearBar > 0),
        CgHeightMm = Stated.Exactly(car.CgHeight),
        // Of the whole car, unsprung masses included, so much swings.
        RollAxisHeightMm = Stated.Exactly(car.CgHeight - car.Swing / car.TotalKg),
        SmallestTurn = 0.125,
    };

    static CornerSetup Setup(EnergyCar car, Corner corner) => new()
    {
        SpringRateNPerMm = Stated.Exactly(car.SpringRate[corner]),
        MotionRatio = Stated.Exactly(car.MotionRatio[corner]),
        TyreRateNPerMm = Stated.Exactly(car.TyreRate[corner]),
        Perch = new() { PitchMmPerTurn = Stated.Exactly(car.PerchPitch[corner]), UpTurnsLeft = 10, DownTurnsLeft = 10 },
    };
}
