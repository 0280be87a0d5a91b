using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Readings;

/// <summary>What one round of questions, or one line of text, tells of a pad. Allocates nothing.</summary>
struct PadReading
{
    FrameCounts _counts;

    /// <summary>Most cells of a pad.</summary>
    public const int MaxCells = PadBody.MaxCells;

    /// <summary>How many cells it carries; 0 from a device that only knows the tilt.</summary>
    public int Cells { get; private set; }

    /// <summary>What the device says of itself, and which of its numbers could not be.</summary>
    public PadStatus Status { get; internal set; }

    /// <summary>Pitch, degrees, ISO 8855; absent when not known.</summary>
    public double? PitchDegrees { get; internal set; }

    /// <summary>Roll, degrees, ISO 8855; absent when not known.</summary>
    public double? RollDegrees { get; internal set; }

    /// <summary>Temperature, °C; absent when not known.</summary>
    public double? TemperatureCelsius { get; internal set; }

    /// <summary>Sum over the cells, counts.</summary>
    public readonly long Sum
    {
        get
        {
            long sum = 0;
            for (var cell = 0; cell < Cells; cell++)
                sum += _counts[cell];
            return sum;
        }
    }

    /// <summary>The counts of one cell, from 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The reading has no such cell.</exception>
    public readonly int this[int cell]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(cell);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(cell, Cells);
            return _counts[cell];
        }
    }

    internal void SetCount(int cell, int count)
    {
        _counts[cell] = count;
        Cells = Math.Max(Cells, cell + 1);
    }
}
