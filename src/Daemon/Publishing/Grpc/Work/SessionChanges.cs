using System.Threading.Channels;
using ScaleLink.Daemon.Work;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Tells one reader that the session should be looked at again: at once, after every step, and at least once a second.</summary>
internal sealed class SessionChanges : IDisposable
{
    /// <summary>The longest time without a word.</summary>
    public static readonly TimeSpan AtLeastEvery = TimeSpan.FromSeconds(1);

    // One pending nudge is enough: the session that follows it has everything.
    private readonly Channel<bool> _nudges = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly WorkDesk _desk;
    private readonly ITimer _heartbeat;

    public SessionChanges(WorkDesk desk, TimeProvider time)
    {
        _desk = desk;
        desk.Changed += Nudge;
        _heartbeat = time.CreateTimer(_ => Nudge(), null, TimeSpan.Zero, AtLeastEvery);
    }

    /// <summary>One item for each time to look.</summary>
    public ChannelReader<bool> Items => _nudges.Reader;

    public void Dispose()
    {
        _heartbeat.Dispose();
        _desk.Changed -= Nudge;
    }

    private void Nudge() => _nudges.Writer.TryWrite(true);
}
