using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Calibration;

/// <summary>The calibration procedure of one pad, judged by its age, across every loss of the daemon.</summary>
public sealed class ProcedureFeed : IAsyncEnumerable<Judged<ProcedureView>>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private readonly DaemonConnection _daemon;
    private readonly Corner _corner;

    /// <summary>The calibration procedure at that corner of the bay that <paramref name="daemon"/> serves.</summary>
    public ProcedureFeed(DaemonConnection daemon, Corner corner)
    {
        ArgumentNullException.ThrowIfNull(daemon);
        (_daemon, _corner) = (daemon, corner);
    }

    /// <summary>The calibration procedure at every step and some five times a second. Never ends by itself and never fails, as <see cref="LoadsFeed"/>.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellationToken"/> asks for the end.</exception>
    public IAsyncEnumerator<Judged<ProcedureView>> GetAsyncEnumerator(CancellationToken cancellationToken = default)
    {
        var request = new WatchProcedureRequest { Corner = _corner };
        var feed = new StampedFeed<ProcedureView>(_daemon, stop => _daemon.CalibrationProcedures.WatchProcedure(request, cancellationToken: stop), view => view.Stamp, Patience);
        return feed.Watch(cancellationToken).GetAsyncEnumerator(cancellationToken);
    }
}
