namespace ScaleLink.Daemon.Pipeline;

/// <summary>The pad's inclinometer, smoothed: pads do not tilt quickly, and the noise of one sample would go into every load.</summary>
/// <param name="smoothing">Part of the way that each new angle moves the smoothed one.</param>
internal sealed class Tilt(double smoothing)
{
    /// <summary>For an angle with every sample of the cells.</summary>
    public const double WithSamples = 1 / 32.0;

    /// <summary>For an inclinometer of its own, which is read more seldom and is quieter.</summary>
    public const double OfItsOwn = 1 / 4.0;

    public double? Pitch { get; private set; }

    public double? Roll { get; private set; }

    public void Add(double? pitch, double? roll) => (Pitch, Roll) = (Follow(Pitch, pitch), Follow(Roll, roll));

    public void Forget() => (Pitch, Roll) = (null, null);

    // A sensor that falls silent takes its last angle with it: an old angle would look like a present one.
    private double? Follow(double? old, double? value) => old + smoothing * (value - old) ?? value;
}
