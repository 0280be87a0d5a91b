using System.Threading.Channels;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Daemon.Proving;
using ScaleLink.Daemon.Work;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Tells one reader to look again at something that changes: at once, whenever it says so, and in a steady beat besides.</summary>
internal sealed class ChangeNudges : IDisposable
{
    /// <summary>The longest time without a word on a stream that tells of changes.</summary>
    public static readonly TimeSpan AtLeastEvery = TimeSpan.FromSeconds(1);

    private static readonly TimeSpan ProofBeat = TimeSpan.FromMilliseconds(200);

    // One pending nudge is enough: what is looked at then has everything.
    private readonly Channel<bool> _nudges = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly Action<Action> _leave;
    private readonly ITimer _beat;

    private ChangeNudges(Action<Action> listen, Action<Action> leave, TimeProvider time, TimeSpan every)
    {
        _leave = leave;
        listen(Nudge);
        _beat = time.CreateTimer(_ => Nudge(), null, TimeSpan.Zero, every);
    }

    /// <summary>Of the list of pads: whenever something in it changes, and at least once a second.</summary>
    public static ChangeNudges Of(IReadOnlyList<PadChannel> pads, TimeProvider time)
    {
        return new ChangeNudges(nudge => Each(p => p.Changed += nudge), nudge => Each(p => p.Changed -= nudge), time, AtLeastEvery);

        void Each(Action<PadChannel> act)
        {
            foreach (var pad in pads)
                act(pad);
        }
    }

    /// <summary>Of the work session: after every step, and at least once a second.</summary>
    public static ChangeNudges Of(WorkDesk desk, TimeProvider time) => new(nudge => desk.Changed += nudge, nudge => desk.Changed -= nudge, time, AtLeastEvery);

    /// <summary>Of the proofs: when one has moved on, and five times a second besides.</summary>
    public static ChangeNudges Of(ProofDesk desk, TimeProvider time) => new(nudge => desk.Changed += nudge, nudge => desk.Changed -= nudge, time, ProofBeat);

    /// <summary>One item for each time to look.</summary>
    public ChannelReader<bool> Items => _nudges.Reader;

    public void Dispose()
    {
        _beat.Dispose();
        _leave(Nudge);
    }

    private void Nudge() => _nudges.Writer.TryWrite(true);
}
