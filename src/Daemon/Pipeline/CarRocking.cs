using ScaleLink.Daemon.Configuration;
using ScaleLink.Weighing;
using ScaleLink.Weighing.Settling.RockingBlind;

namespace ScaleLink.Daemon.Pipeline;

/// <summary>What is known beforehand of how the car rocks.</summary>
internal static class CarRocking
{
    /// <summary>From ride rates and tracks; equal and little known without a car.</summary>
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
