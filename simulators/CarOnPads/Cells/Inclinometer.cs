using CarOnPads.Physics;

namespace CarOnPads.Cells;

/// <summary>Two axes, degrees, ISO 8855 signs. Says the true tilt, its mounting error, the zero that it was given, and its noise.</summary>
sealed class Inclinometer(long seed, string name, Imperfections imperfections)
{
    /// <summary>Standard deviation, degrees.</summary>
    public const double NoiseDegrees = 0.01;

    /// <summary>Largest mounting error, degrees.</summary>
    public const double OffsetDegrees = 0.05;

    const double Range = 30;
    readonly NoiseSource _noise = new(seed, name + " tilt");
    readonly double _pitchOffset = new NoiseSource(seed, name + " pitch mounting").Uniform(-OffsetDegrees, OffsetDegrees);
    readonly double _rollOffset = new NoiseSource(seed, name + " roll mounting").Uniform(-OffsetDegrees, OffsetDegrees);

    /// <summary>What it says on level ground besides its mounting error, degrees.</summary>
    public (double Pitch, double Roll) Zero { get; set; }

    public (double Pitch, double Roll) Read(double pitch, double roll)
    {
        (pitch, roll) = (pitch + Zero.Pitch, roll + Zero.Roll);
        if (imperfections[Imperfection.TiltOffset])
            (pitch, roll) = (pitch + _pitchOffset, roll + _rollOffset);
        if (imperfections[Imperfection.TiltNoise])
            (pitch, roll) = (pitch + NoiseDegrees * _noise.Normal(), roll + NoiseDegrees * _noise.Normal());
        return (Math.Clamp(pitch, -Range, Range), Math.Clamp(roll, -Range, Range));
    }
}
