using Grpc.Core;
using ScaleLink.Api.V1;
using ScaleLink.Board.Age;

namespace ScaleLink.Board.Connection;

/// <summary>Asks the daemon for its clock: before the first value, soon and often at first, then now and then, and at once when the clock is uncertain.</summary>
internal sealed class ClockKeeper(Feed.FeedClient daemon, TimeProvider time)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(5);

    private static readonly TimeSpan Quick = TimeSpan.FromMilliseconds(100);
    private const int MostTries = 3;

    private long _askedAt;
    private TimeSpan _wait = Look;
    private bool _isAskedAlready;

    public DaemonClock Clock { get; } = new(time);

    /// <summary>Takes an answer that somebody else has got: the first question is asked already.</summary>
    /// <param name="learned">The answer.</param>
    /// <param name="at">Timestamp from before it was fetched: no value looks younger than it is.</param>
    public void Take(LearnedClock learned, long at)
    {
        Clock.Take(learned.Answer, at - (long)(learned.Since.TotalSeconds * time.TimestampFrequency), time.GetTimestamp());
        _isAskedAlready = true;
    }

    /// <summary>
    /// Asks before the first value, and begins again to ask often. The first answer of a page that is still warming up takes
    /// seconds, and would make every value look that much too old: a slow one is asked for again.
    /// </summary>
    public async Task Ask(CancellationToken stop)
    {
        _wait = Look;
        if (_isAskedAlready)
        {
            _isAskedAlready = false;
            return;
        }

        // A clock that is known already needs one answer: it tells whether the run is the same.
        var most = Clock.StartId is null ? MostTries : 1;
        for (var tries = 0; tries < most && !(tries > 0 && Clock.RoundTrip < Quick); tries++)
            await AskOnce(stop);
    }

    /// <summary>Asks for as long as the daemon is there.</summary>
    public async Task Keep(Func<bool> isThere, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            await Task.Delay(Look, time, stop);
            var isDue = Clock.StartId is null || time.GetElapsedTime(_askedAt) >= _wait;
            if (!isDue || !isThere())
                continue;
            try
            {
                await AskOnce(stop);
                _wait = _wait * 2 < Longest ? _wait * 2 : Longest;
            }
            catch (Exception e) when (e is RpcException or OperationCanceledException)
            {
                // The stream tells of a daemon that is away; the clock only waits for its next turn.
            }
        }
    }

    private async Task AskOnce(CancellationToken stop)
    {
        using var deadline = new CancellationTokenSource(Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stop, deadline.Token);
        _askedAt = time.GetTimestamp();
        var askedAt = _askedAt;
        var answer = await daemon.GetClockAsync(new GetClockRequest(), cancellationToken: either.Token);
        Clock.Take(answer, askedAt, time.GetTimestamp());
    }
}
