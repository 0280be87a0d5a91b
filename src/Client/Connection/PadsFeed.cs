using ScaleLink.Api.V1;
using ScaleLink.Client.Age;

namespace ScaleLink.Client.Connection;

/// <summary>The pads of a bay and their health, judged by their age, across every loss of the daemon.</summary>
public sealed class PadsFeed : IAsyncEnumerable<Judged<ListPadsResponse>>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private readonly DaemonConnection _daemon;

    /// <summary>The pads of the bay that <paramref name="daemon"/> serves.</summary>
    public PadsFeed(DaemonConnection daemon)
    {
        ArgumentNullException.ThrowIfNull(daemon);
        _daemon = daemon;
    }

    /// <summary>The list at every change and at least four times a second. Never ends by itself and never fails, as <see cref="LoadsFeed"/>.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellationToken"/> asks for the end.</exception>
    public IAsyncEnumerator<Judged<ListPadsResponse>> GetAsyncEnumerator(CancellationToken cancellationToken = default)
    {
        var feed = new StampedFeed<ListPadsResponse>(_daemon, stop => _daemon.Pads.WatchPads(new WatchPadsRequest(), cancellationToken: stop), list => list.Stamp, Patience);
        return feed.Watch(cancellationToken).GetAsyncEnumerator(cancellationToken);
    }
}
