using CarOnPads.Physics;

namespace CarOnPads.Cells;

/// <summary>Mains pick-up: 50 Hz with some second harmonic.</summary>
sealed class MainsHum(NoiseSource noise)
{
    const double Hertz = 50;
    const double SecondHarmonic = 0.3;
    readonly double _phase = noise.Uniform(0, Math.Tau);

    /// <summary>Relative to the fundamental's amplitude.</summary>
    public double At(double time)
    {
        var angle = Math.Tau * Hertz * time + _phase;
        return Math.Sin(angle) + SecondHarmonic * Math.Sin(2 * angle);
    }
}
