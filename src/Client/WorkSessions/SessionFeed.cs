using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.WorkSessions;

/// <summary>The work session of a bay, judged by its age, across every loss of the daemon.</summary>
public sealed class SessionFeed : IAsyncEnumerable<Judged<GetSessionResponse>>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private readonly DaemonConnection _daemon;

    /// <summary>The session in the bay that <paramref name="daemon"/> serves.</summary>
    public SessionFeed(DaemonConnection daemon)
    {
        ArgumentNullException.ThrowIfNull(daemon);
        _daemon = daemon;
    }

    /// <summary>The session after every step and at least four times a second. Never ends by itself and never fails, as <see cref="LoadsFeed"/>.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellationToken"/> asks for the end.</exception>
    public IAsyncEnumerator<Judged<GetSessionResponse>> GetAsyncEnumerator(CancellationToken cancellationToken = default)
    {
        var feed = new StampedFeed<GetSessionResponse>(_daemon, stop => _daemon.WorkSessions.WatchSession(new WatchSessionRequest(), cancellationToken: stop), r => r.Stamp, Patience);
        return feed.Watch(cancellationToken).GetAsyncEnumerator(cancellationToken);
    }
}
