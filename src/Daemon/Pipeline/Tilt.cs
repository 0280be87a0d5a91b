namespace ScaleLink.Daemon.Pipeline;

/// <summary>The pad's inclinometer, smoothed: pads do not tilt quickly, and the noise of one sample would go into every load.</summary>
internal sealed class Tilt
{
    private const double Smoothing = 1 / 32.0;

    public double? Pitch { get; private set; }

    public double? Roll { get; private set; }

    public void Add(double? pitch, double? roll) => (Pitch, Roll) = (Follow(Pitch, pitch), Follow(Roll, roll));

    public void Forget() => (Pitch, Roll) = (null, null);

    // A sensor that falls silent takes its last angle with it: an old angle would look like a present one.
    private static double? Follow(double? old, double? value) => old + Smoothing * (value - old) ?? value;
}
