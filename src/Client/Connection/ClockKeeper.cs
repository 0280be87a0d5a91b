using Grpc.Core;
using ScaleLink.Api.V1;

namespace ScaleLink.Client.Connection;

/// <summary>Asks the daemon for its clock: once before the first value, then regularly, and at once when the clock is uncertain.</summary>
internal sealed class ClockKeeper : IAsyncDisposable
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(5);
    // The first answer bears the cost of connecting: better ones are had at once.
    private static readonly TimeSpan AtFirst = TimeSpan.FromMilliseconds(250);
    private const int FirstFew = 4;
    private static readonly TimeSpan AfterUncertainty = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan Deadline = TimeSpan.FromSeconds(3);

    private readonly Feed.FeedClient _feed;
    private readonly DaemonClock _clock;
    private readonly TimeProvider _time;
    private readonly CancellationTokenSource _end = new();
    private readonly SemaphoreSlim _uncertainty = new(0, 1);
    private readonly Lock _gate = new();
    private Task? _loop;
    private int _answers;

    public ClockKeeper(Feed.FeedClient feed, DaemonClock clock, TimeProvider time)
    {
        (_feed, _clock, _time) = (feed, clock, time);
        clock.Questioned += OnUncertainty;
    }

    /// <summary>Asks now, and from now on regularly.</summary>
    public async Task Ask(CancellationToken stop)
    {
        using var deadline = new CancellationTokenSource(Deadline, _time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stop, deadline.Token);
        var askedAt = _time.GetTimestamp();
        using var call = _feed.GetClockAsync(new GetClockRequest(), cancellationToken: either.Token);
        var answer = await call.ResponseAsync.ConfigureAwait(false);
        _clock.Take(answer, askedAt, _time.GetTimestamp());
        _answers++;
        lock (_gate)
            _loop ??= KeepAsking();
    }

    public async ValueTask DisposeAsync()
    {
        _clock.Questioned -= OnUncertainty;
        await _end.CancelAsync().ConfigureAwait(false);
        if (_loop is { } loop)
            await loop.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _uncertainty.Dispose();
        _end.Dispose();
    }

    private async Task KeepAsking()
    {
        while (!_end.IsCancellationRequested)
        {
            await WaitForTurn().ConfigureAwait(false);
            try
            {
                await Ask(_end.Token).ConfigureAwait(false);
            }
            catch (Exception e) when (e is RpcException or OperationCanceledException)
            {
                // The feeds tell of a daemon that is away; the clock only waits for its next turn.
            }
        }
    }

    private async Task WaitForTurn()
    {
        using var turn = new CancellationTokenSource(_answers < FirstFew ? AtFirst : Every, _time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(turn.Token, _end.Token);
        try
        {
            await _uncertainty.WaitAsync(either.Token).ConfigureAwait(false);
            // An uncertainty that cannot be cleared at once must not become a flood of questions.
            await Task.Delay(AfterUncertainty, _time, _end.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            // Its turn has come, or the end.
        }
    }

    private void OnUncertainty()
    {
        lock (_gate)
            if (_uncertainty.CurrentCount == 0)
                _uncertainty.Release();
    }
}
