using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Measure;
using ScaleLink.Weighing.Settling.RockingBlind;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>Keeps the weigher's knowledge of how the car rocks in step with the car in the bay, bars off while a session has them off.</summary>
internal sealed class CarRocking
{
    // Warp per load is a matter of rates and places; the mass drops out of it.
    private const double AnyMassKg = 1000;

    public CarRocking(StandingCar car, RockingPrior prior)
    {
        car.Changed += Follow;
        Follow();

        void Follow() => prior.Set(car.Model is { } model ? BlindDirection.Of(new CarStatics(model, AnyMassKg)) : null);
    }

    /// <summary>From the ride rates and tracks of the bay file; equal and little known without them.</summary>
    public static BlindDirection DirectionOf(CarConfiguration? car)
    {
        if (car is null)
            return BlindDirection.Unknown(WarpOf(1, 1));
        var compliances = new Corners(1 / car.FrontRideRate, 1 / car.FrontRideRate, 1 / car.RearRideRate, 1 / car.RearRideRate);
        return BlindDirection.FromModel(compliances, Corners.Same(car.RateUncertaintyPercent / 100), WarpOf(car.FrontTrackMm, car.RearTrackMm));
    }

    // The load pattern without sum or moment, for two axles with their own tracks.
    private static Corners WarpOf(double frontTrack, double rearTrack)
    {
        var front = 2 * rearTrack / (frontTrack + rearTrack);
        var rear = 2 - front;
        return new Corners(front, -front, -rear, rear);
    }
}
