using System.Threading.Channels;
using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Tells one reader that the list of pads should be looked at again: at once, whenever something in it changes, and at least once a second.</summary>
internal sealed class PadChanges : IDisposable
{
    /// <summary>The longest time without a word.</summary>
    public static readonly TimeSpan AtLeastEvery = TimeSpan.FromSeconds(1);

    // One pending nudge is enough: the list that follows it has everything.
    private readonly Channel<bool> _nudges = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly IReadOnlyList<PadChannel> _pads;
    private readonly ITimer _heartbeat;

    public PadChanges(IReadOnlyList<PadChannel> pads, TimeProvider time)
    {
        _pads = pads;
        foreach (var pad in pads)
            pad.Changed += Nudge;
        _heartbeat = time.CreateTimer(_ => Nudge(), null, TimeSpan.Zero, AtLeastEvery);
    }

    /// <summary>One item for each time to look.</summary>
    public ChannelReader<bool> Items => _nudges.Reader;

    public void Dispose()
    {
        _heartbeat.Dispose();
        foreach (var pad in _pads)
            pad.Changed -= Nudge;
    }

    private void Nudge() => _nudges.Writer.TryWrite(true);
}
