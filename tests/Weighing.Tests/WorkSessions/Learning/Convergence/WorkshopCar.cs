using MathNet.Numerics.Distributions;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Statics;

namespace Weighing.Tests.WorkSessions.Learning.Convergence;

/// <summary>
/// A car in the workshop: the true one, found at rest by least energy, and what the crew believes about it, with rates wrong
/// by up to 30 %. Each settling leaves cross weight off by 0.1 % (one standard deviation), each pad reads to 0.1 kg.
/// </summary>
sealed class WorkshopCar
{
    public const double SettleRepeatability = 0.1, PadNoise = 0.1, LargestRateError = 0.3, Thread = 5, HeightBand = 6;
    const double StartHeight = 100;
    // Evenly likely within the largest error (JCGM 100:2008, 4.3.7).
    static readonly double RateUncertainty = LargestRateError / Math.Sqrt(3);

    readonly EnergyCar truth;
    readonly Random random;
    readonly Corners warp;
    readonly (Corners Loads, Corners Heights) start;

    WorkshopCar(EnergyCar truth, CarModel believed, bool sharedError, Random random)
    {
        this.truth = truth;
        this.random = random;
        Believed = believed;
        SharedError = sharedError;
        start = truth.Rest();
        warp = new CarStatics(RandomCars.ModelOf(truth), truth.TotalKg).FromBuiltInWarp(1);
        warp = 1 / (warp.RF + warp.LR) * warp;
    }

    /// <summary>What the crew states.</summary>
    public CarModel Believed { get; }

    /// <summary>True when all springs are wrong alike and all tyres are wrong alike.</summary>
    public bool SharedError { get; }

    public double TotalKg => truth.TotalKg;

    /// <summary>Ride heights as measured before the first turn, mm: on target.</summary>
    public static Corners HeightsAtStart => Corners.Same(StartHeight);

    /// <param name="random">Draws everything.</param>
    /// <param name="smallestTurn">That the crew can set.</param>
    public static WorkshopCar Draw(Random random, double smallestTurn)
    {
        double U(double low, double high) => low + (high - low) * random.NextDouble();
        var truth = RandomCars.Next(random, bars: false);
        var offset = U(0.7, 4) * (random.Next(2) == 0 ? 1 : -1);
        truth = Aim(truth, 50 + offset);
        // Half the crews have one wrong belief about all springs and one about all tyres, the others four of each.
        var shared = random.Next(2) == 0;
        double sharedSpring = U(-LargestRateError, LargestRateError), sharedTyre = U(-LargestRateError, LargestRateError);
        var believed = RandomCars.ModelOf(truth) with { SmallestTurn = smallestTurn };
        foreach (var corner in Corners.All)
        {
            var spring = 1 + (shared ? sharedSpring : U(-LargestRateError, LargestRateError));
            var tyre = 1 + (shared ? sharedTyre : U(-LargestRateError, LargestRateError));
            var ratio = 1 + U(-0.03, 0.03);
            believed = believed.Change(corner, s => s with
            {
                SpringRateNPerMm = Stated.Within(s.SpringRateNPerMm.Estimate * spring, RateUncertainty),
                TyreRateNPerMm = Stated.Within(s.TyreRateNPerMm.Estimate * tyre, RateUncertainty),
                MotionRatio = Stated.Within(s.MotionRatio.Estimate * ratio, 0.017),
                LowestRideHeightMm = StartHeight - HeightBand,
                HighestRideHeightMm = StartHeight + HeightBand,
                Perch = s.Perch with { UpTurnsLeft = Thread, DownTurnsLeft = Thread },
            });
        }
        // They state what each rate is good to, and nothing of what the rates share.
        return new(truth, believed.WithUsualSharedUncertainties(), shared, random);
    }

    /// <summary>Cross weight without settling repeatability or noise, percent.</summary>
    public double TrueCrossWeight(Corners turns)
    {
        var loads = truth.Rest(turns: turns).Loads;
        return 100 * (loads.RF + loads.LR) / loads.Sum;
    }

    /// <summary>Change of ride height since the start, mm.</summary>
    public Corners TrueRise(Corners turns) => truth.Rest(turns: turns).Heights - start.Heights;

    /// <summary>Settles and weighs.</summary>
    public LoadSummary Weigh(Corners turns)
    {
        var loads = truth.Rest(turns: turns).Loads
            + SettleRepeatability * TotalKg / 100 * Normal.Sample(random, 0, 1) * warp
            + Corners.From(_ => Normal.Sample(random, 0, PadNoise));
        return new(loads, CornerMatrix.Diagonal(Corners.Same(PadNoise * PadNoise)));
    }

    // Built-in twist that gives the wanted cross weight: one corner's free length, by the secant rule.
    static EnergyCar Aim(EnergyCar car, double crossWeight)
    {
        EnergyCar With(double mm) => car with { FreeLength = car.FreeLength.With(Corner.RF, mm) };
        double Miss(double mm) => With(mm).Rest().Loads is var l ? 100 * (l.RF + l.LR) / l.Sum - crossWeight : 0;
        double a = 0, b = 5, atA = Miss(a), atB = Miss(b);
        for (var i = 0; i < 20 && Math.Abs(atB) > 1e-6; i++)
        {
            (a, atA, b) = (b, atB, b - atB * (b - a) / (atB - atA));
            atB = Miss(b);
        }
        return With(b);
    }
}
