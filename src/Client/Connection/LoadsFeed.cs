using ScaleLink.Api.V1;
using ScaleLink.Client.Age;

namespace ScaleLink.Client.Connection;

/// <summary>The live loads of a bay, judged by their age, across every loss of the daemon.</summary>
public sealed class LoadsFeed : IAsyncEnumerable<Judged<Loads>>
{
    private const double LeastPatienceSeconds = 5;
    private readonly DaemonConnection _daemon;
    private readonly double _rateHz;

    /// <summary>Loads at <paramref name="rateHz"/> messages a second, 0.1 to 20.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rate lies outside.</exception>
    public LoadsFeed(DaemonConnection daemon, double rateHz = 10)
    {
        ArgumentNullException.ThrowIfNull(daemon);
        if (rateHz is not (>= 0.1 and <= 20))
            throw new ArgumentOutOfRangeException(nameof(rateHz), rateHz, "Ask for 0.1 to 20 messages a second.");
        (_daemon, _rateHz) = (daemon, rateHz);
    }

    /// <summary>
    /// Every message as it comes, and at least four times a second the newest one judged again. Never ends by itself and
    /// never fails: what is wrong stands in <see cref="Judged{T}.Trouble"/>. A reader that is slow loses the oldest messages.
    /// </summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellationToken"/> asks for the end.</exception>
    public IAsyncEnumerator<Judged<Loads>> GetAsyncEnumerator(CancellationToken cancellationToken = default)
    {
        var patience = TimeSpan.FromSeconds(Math.Max(LeastPatienceSeconds, 3 / _rateHz));
        var request = new WatchLoadsRequest { RateHz = _rateHz };
        var feed = new StampedFeed<Loads>(_daemon, stop => _daemon.Feed.WatchLoads(request, cancellationToken: stop), loads => loads.Stamp, patience);
        return feed.Watch(cancellationToken).GetAsyncEnumerator(cancellationToken);
    }
}
