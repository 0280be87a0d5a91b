namespace ScaleLink.Daemon.Pipeline;

/// <summary>The pad's inclinometer, smoothed: pads do not tilt quickly, and the noise of one sample would go into every load.</summary>
internal sealed class Tilt
{
    private const double TimeConstantNs = 0.4 * Nanoseconds.PerSecond;
    private long _atNs;

    public double? Pitch { get; private set; }

    public double? Roll { get; private set; }

    public void Add(double? pitch, double? roll, long atNs)
    {
        var share = 1 - Math.Exp(-Math.Max(0, atNs - _atNs) / TimeConstantNs);
        (Pitch, Roll, _atNs) = (Follow(Pitch, pitch, share), Follow(Roll, roll, share), atNs);
    }

    public void Forget() => (Pitch, Roll) = (null, null);

    // A sensor that falls silent takes its last angle with it: an old angle would look like a present one.
    private static double? Follow(double? old, double? value, double share) => old + share * (value - old) ?? value;
}
