using System.Threading.Channels;
using ScaleLink.Daemon.Bay;

namespace ScaleLink.Daemon.Contract;

/// <summary>Tells one reader to look again at something that changes: at once, whenever it says so, and in a steady beat besides.</summary>
internal sealed class ChangeNudges : IDisposable
{
    /// <summary>The longest time without a word on a stream that tells of changes.</summary>
    public static readonly TimeSpan AtLeastEvery = TimeSpan.FromSeconds(1);

    // One pending nudge is enough: what is looked at then has everything.
    private readonly Channel<bool> _nudges = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly Action<Action> _leave;
    private readonly ITimer _beat;

    /// <param name="listen">Begins to hear of changes.</param>
    /// <param name="leave">Ends it.</param>
    /// <param name="time">For the beat.</param>
    /// <param name="every">The beat; once a second unless said otherwise.</param>
    public ChangeNudges(Action<Action> listen, Action<Action> leave, TimeProvider time, TimeSpan? every = null)
    {
        _leave = leave;
        listen(Nudge);
        _beat = time.CreateTimer(_ => Nudge(), null, TimeSpan.Zero, every ?? AtLeastEvery);
    }

    /// <summary>Of the list of pads: whenever something in it changes, and at least once a second.</summary>
    public static ChangeNudges Of(IReadOnlyList<PadChannel> pads, TimeProvider time)
    {
        return new ChangeNudges(nudge => Each(p => p.Changed += nudge), nudge => Each(p => p.Changed -= nudge), time);

        void Each(Action<PadChannel> act)
        {
            foreach (var pad in pads)
                act(pad);
        }
    }

    /// <summary>One item for each time to look.</summary>
    public ChannelReader<bool> Items => _nudges.Reader;

    public void Dispose()
    {
        _beat.Dispose();
        _leave(Nudge);
    }

    private void Nudge() => _nudges.Writer.TryWrite(true);
}
