using CarOnPads.Cells;
using CarOnPads.Physics;

namespace CarOnPads.Pads;

/// <summary>
/// How a pad lies at its place: which way round, and a hair off from putting down to putting down. Turned by half a turn about the
/// vertical, the ground's tilt comes from the other side in the pad's own axes; what the inclinometer adds turns with the pad.
/// </summary>
sealed class Seat(long seed, string name, Imperfections imperfections)
{
    /// <summary>Standard deviation of the tilt from putting down to putting down, degrees: 0.1 mm under one edge of a pad of 0.4 m.</summary>
    public const double RepeatabilityDegrees = 0.015;

    const double HandlingSeconds = 1.5;
    // Nobody keeps a pad level while it is carried round.
    const double HandlingDegrees = 8;
    readonly NoiseSource _noise = new(seed, name + " seat");
    double _handledFrom = double.NegativeInfinity;
    double _pitchOff;
    double _rollOff;

    /// <summary>It lies the other way round than at the start.</summary>
    public bool IsTurned { get; private set; }

    /// <summary>Which way the pad's own forward and left point along the car's.</summary>
    public int Sign => IsTurned ? -1 : 1;

    /// <summary>Somebody lifts it, turns it by half a turn and puts it down at the same place. Returns when it lies there, s.</summary>
    public double Turn(double now)
    {
        IsTurned = !IsTurned;
        (_handledFrom, _pitchOff, _rollOff) = (now, RepeatabilityDegrees * _noise.Normal(), RepeatabilityDegrees * _noise.Normal());
        return now + HandlingSeconds;
    }

    /// <summary>Tilt of the surface in the pad's own axes, degrees.</summary>
    public (double Pitch, double Roll) InOwnAxes(double pitch, double roll, double now)
    {
        if (imperfections[Imperfection.Seating])
            (pitch, roll) = (pitch + _pitchOff, roll + _rollOff);
        var handled = (now - _handledFrom) / HandlingSeconds;
        var swing = handled is >= 0 and < 1 ? HandlingDegrees * Math.Sin(Math.PI * handled) : 0;
        return (Sign * pitch + swing, Sign * roll - 0.5 * swing);
    }
}
