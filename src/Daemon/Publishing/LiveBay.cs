using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Publishing;

/// <summary>What every face reads from: the pads, the newest reading, and the readings as they come.</summary>
public sealed class LiveBay(IReadOnlyList<PadChannel> pads)
{
    private BayReading? _newest;

    /// <summary>The pads, in the order LF, RF, LR, RR.</summary>
    public IReadOnlyList<PadChannel> Pads { get; } = [.. pads.OrderBy(p => p.Corner)];

    /// <summary>The newest reading; absent in the first moments of a run.</summary>
    public BayReading? Newest => Volatile.Read(ref _newest);

    /// <summary>Every reading, 20 a second.</summary>
    public Broadcast<BayReading> Readings { get; } = new();

    /// <summary>A new reading for every face.</summary>
    public void Publish(BayReading reading)
    {
        Volatile.Write(ref _newest, reading);
        Readings.Publish(reading);
    }
}
