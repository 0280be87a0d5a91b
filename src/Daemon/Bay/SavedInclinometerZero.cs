using ScaleLink.Weighing.InclinometerZeros;

namespace ScaleLink.Daemon.Bay;

/// <summary>The tested zero of a pad's inclinometer.</summary>
/// <param name="Zero">As it came out.</param>
/// <param name="At">When the test was finished, UTC.</param>
/// <param name="Who">Who finished it.</param>
/// <param name="Source">Where the angles came from: empty for the pad's own, else the link and slave of an inclinometer of its own.</param>
internal sealed record SavedInclinometerZero(InclinometerZero Zero, DateTimeOffset At, string Who, string Source)
{
    /// <summary>One standard uncertainty that a zero leaves in a tilt about either axis, degrees; none: the inclinometer was never tested.</summary>
    public static double UncertaintyDeg(SavedInclinometerZero? zero) => zero?.Zero.StandardUncertaintyDeg ?? InclinometerZero.UntestedDeg;

    /// <summary>Temperature of the pad in the test, degrees Celsius.</summary>
    public double? TemperatureC { get; init; }
}
