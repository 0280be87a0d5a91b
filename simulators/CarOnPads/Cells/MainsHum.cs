using CarOnPads.Physics;

namespace CarOnPads.Cells;

/// <summary>Mains pick-up: 50 Hz with some second harmonic.</summary>
internal sealed class MainsHum(NoiseSource noise)
{
    private const double Hertz = 50;
    private const double SecondHarmonic = 0.3;
    private readonly double _phase = noise.Uniform(0, Math.Tau);

    /// <summary>Relative to the fundamental's amplitude.</summary>
    public double At(double time)
    {
        var angle = Math.Tau * Hertz * time + _phase;
        return Math.Sin(angle) + SecondHarmonic * Math.Sin(2 * angle);
    }
}
