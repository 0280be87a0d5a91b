using System.Threading.Channels;
using ScaleLink.Daemon.Proving;

namespace ScaleLink.Daemon.Publishing.Grpc.Proofs;

/// <summary>Tells one reader to look at the proof again: at once when it has moved on, five times a second besides.</summary>
internal sealed class ProofChanges : IDisposable
{
    /// <summary>The longest time without a word.</summary>
    public static readonly TimeSpan Slow = TimeSpan.FromSeconds(1);

    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(200);

    private readonly Channel<bool> _nudges = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly ProofDesk _desk;
    private readonly ITimer _beat;

    public ProofChanges(ProofDesk desk, TimeProvider time)
    {
        _desk = desk;
        desk.Changed += Nudge;
        _beat = time.CreateTimer(_ => Nudge(), null, TimeSpan.Zero, Beat);
    }

    /// <summary>One item for each time to look.</summary>
    public ChannelReader<bool> Items => _nudges.Reader;

    public void Dispose()
    {
        _beat.Dispose();
        _desk.Changed -= Nudge;
    }

    private void Nudge() => _nudges.Writer.TryWrite(true);
}
