using ScaleLink.Api.V1;
using ScaleLink.Client.Age;

namespace ScaleLink.Client.Connection;

/// <summary>The proof of one pad, judged by its age, across every loss of the daemon.</summary>
public sealed class ProofFeed : IAsyncEnumerable<Judged<ProofView>>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private readonly DaemonConnection _daemon;
    private readonly Corner _corner;

    /// <summary>The proof at that corner of the bay that <paramref name="daemon"/> serves.</summary>
    public ProofFeed(DaemonConnection daemon, Corner corner)
    {
        ArgumentNullException.ThrowIfNull(daemon);
        (_daemon, _corner) = (daemon, corner);
    }

    /// <summary>The proof at every step and some five times a second. Never ends by itself and never fails, as <see cref="LoadsFeed"/>.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellationToken"/> asks for the end.</exception>
    public IAsyncEnumerator<Judged<ProofView>> GetAsyncEnumerator(CancellationToken cancellationToken = default)
    {
        var request = new WatchProofRequest { Corner = _corner };
        var feed = new StampedFeed<ProofView>(_daemon, stop => _daemon.Proofs.WatchProof(request, cancellationToken: stop), view => view.Stamp, Patience);
        return feed.Watch(cancellationToken).GetAsyncEnumerator(cancellationToken);
    }
}
