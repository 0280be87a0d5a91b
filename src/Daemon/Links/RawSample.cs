using System.Runtime.CompilerServices;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Daemon.Links;

/// <summary>One sample as a pad sent it, placed on the daemon's clock.</summary>
internal readonly record struct RawSample
{
    /// <summary>The pad's own count; absent when the protocol has none.</summary>
    public uint? Sequence { get; init; }

    /// <summary>The pad's clock, microseconds, wrapping at 32 bits; absent when the protocol has none.</summary>
    public uint? DeviceMicroseconds { get; init; }

    /// <summary>When the bytes reached the daemon, ns on <see cref="BayClock"/>.</summary>
    public long ArrivalNs { get; init; }

    /// <summary>Counts of each cell.</summary>
    public CellCounts Counts { get; init; }

    /// <summary>How many of <see cref="Counts"/> are cells.</summary>
    public int Cells { get; init; }

    /// <summary>What the pad says of this sample.</summary>
    public PadStatus Status { get; init; }

    /// <summary>Pitch of the pad, degrees, ISO 8855.</summary>
    public double? PitchDegrees { get; init; }

    /// <summary>Roll of the pad, degrees, ISO 8855.</summary>
    public double? RollDegrees { get; init; }

    /// <summary>Temperature, degrees Celsius.</summary>
    public double? TemperatureCelsius { get; init; }
}

/// <summary>Room for the counts of one pad's cells.</summary>
[InlineArray(MaxCells)]
internal struct CellCounts
{
    /// <summary>Most cells of a pad.</summary>
    public const int MaxCells = 8;

    private int _first;
}
