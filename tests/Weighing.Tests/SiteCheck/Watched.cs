using ScaleLink.Measure;
using ScaleLink.Weighing.SiteCheck;

namespace Weighing.Tests.SiteCheck;

/// <summary>Empty pads made up for a watch, one moment a second.</summary>
static class Watched
{
    /// <summary>A pad whose zero, temperature and tilt follow what is given, by seconds.</summary>
    public static WatchedPad Pad(
        Corner corner, Random random, Func<double, double>? kg = null, double noiseKg = 0.01, int seconds = 600,
        Func<double, double>? celsius = null, Func<double, double>? pitch = null) => new(corner,
        [.. Enumerable.Range(0, seconds + 1).Select(i => new PadMoment(i, (kg?.Invoke(i) ?? 0) + noiseKg * Normal(random),
            celsius is null ? null : celsius(i) + 0.05 * Normal(random), pitch is null ? null : pitch(i) + 0.01 * Normal(random), pitch is null ? null : 0))])
    {
        CalibrationKg = 0.05, IsCalibrated = true, CalibratedAtC = 20,
    };

    /// <summary>Four of them; those not named are quiet at 20 °C.</summary>
    public static IReadOnlyList<WatchedPad> Four(Random random, params IReadOnlyList<WatchedPad> special) =>
        [.. Corners.All.ToArray().Select(c => special.FirstOrDefault(p => p.Corner == c) ?? Pad(c, random, celsius: _ => 20, pitch: _ => 0))];

    public static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
