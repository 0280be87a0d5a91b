using Grpc.Core;
using ScaleLink.Api.V1;
using ScaleLink.Board.Age;

namespace ScaleLink.Board.Connection;

/// <summary>Keeps the page's one stream from the daemon open for ever, and judges what came by its age.</summary>
internal sealed class BayFeed(Feed.FeedClient daemon, TimeProvider time) : IDisposable
{
    private const double FullRateHz = 10, LeastRateHz = 2;
    // So far behind, buffers on the way hold what this device is too slow to read.
    private static readonly TimeSpan FarBehind = TimeSpan.FromSeconds(5);
    // An open stream on which nothing comes is as good as a broken one: readings come ten times a second.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    private readonly CancellationTokenSource _end = new();
    private readonly Backoff _backoff = new();
    private readonly ClockKeeper _clock = new(daemon, time);
    private readonly TaskCompletionSource _begun = new();
    private CancellationTokenSource? _attempt;
    private double _rateHz = FullRateHz;
    private TaskCompletionSource? _hidden;
    private Loads? _loads;
    private ListPadsResponse? _pads;
    private GetSessionResponse? _session;
    private Diagnostic? _trouble = DaemonDiagnostics.NotYet;

    /// <summary>Something new came, or something changed in the connection.</summary>
    public event Action? Changed;

    /// <summary>Nobody sees the page any more.</summary>
    public event Action? Unseen;

    /// <summary>The daemon's clock as seen from here.</summary>
    public DaemonClock Clock => _clock.Clock;

    /// <summary>The bay, judged now.</summary>
    public BayView View => new(
        AgeJudge.Judge(_loads, _loads?.Stamp, Clock), AgeJudge.Judge(_pads, _pads?.Stamp, Clock), AgeJudge.Judge(_session, _session?.Stamp, Clock), _trouble);

    /// <summary>The session as an answer to a step of this page shows it: sooner than the stream tells.</summary>
    public void Take(Session session)
    {
        if (_session is { } known)
            _session = new GetSessionResponse { Stamp = known.Stamp, Session = session };
        Changed?.Invoke();
    }

    /// <summary>Done once everything that the bay tells has come, or what keeps it away is known.</summary>
    public Task Begun => _begun.Task;

    /// <summary>Begins; never fails.</summary>
    /// <param name="learned">The daemon's clock, if somebody has asked for it already.</param>
    /// <param name="at">Timestamp from before <paramref name="learned"/> was fetched.</param>
    public void Start(LearnedClock? learned, long at)
    {
        if (learned is not null)
            _clock.Take(learned, at);
        _ = Task.WhenAll(KeepReading(_end.Token), _clock.Keep(() => _trouble is null, _end.Token));
    }

    /// <summary>A page that nobody sees gives its connection back: a browser has six for all pages of one daemon.</summary>
    public void Show(bool isVisible)
    {
        if (isVisible)
        {
            _backoff.Reset();
            _rateHz = FullRateHz;
            Interlocked.Exchange(ref _hidden, null)?.TrySetResult();
        }
        else if (_hidden is null)
        {
            _hidden = new TaskCompletionSource();
            _attempt?.Cancel();
            Unseen?.Invoke();
        }
    }

    /// <summary>Done once the page is seen.</summary>
    public Task Seen(CancellationToken stop) => _hidden?.Task.WaitAsync(stop) ?? Task.CompletedTask;

    public void Dispose()
    {
        _end.Cancel();
        _end.Dispose();
    }

    private async Task KeepReading(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            await Seen(stop);
            Tell(await Attempt(stop));
            if (_hidden is null)
                await Task.Delay(_backoff.Next(), time, stop);
        }
    }

    private async Task<Diagnostic> Attempt(CancellationToken stop)
    {
        using var attempt = CancellationTokenSource.CreateLinkedTokenSource(stop);
        using var silence = new CancellationTokenSource(Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(attempt.Token, silence.Token);
        _attempt = attempt;
        try
        {
            await _clock.Ask(either.Token);
            using var call = daemon.WatchBay(new WatchBayRequest { RateHz = _rateHz }, cancellationToken: either.Token);
            while (await call.ResponseStream.MoveNext(either.Token))
            {
                silence.CancelAfter(Patience);
                Take(call.ResponseStream.Current);
                // Only what has just come tells: the loads from before an outage are old whatever the connection does.
                if (Clock.AgeOf(call.ResponseStream.Current.Loads?.Stamp) > FarBehind)
                    return AskForFewer();
            }

            return DaemonDiagnostics.Ended;
        }
        catch (RpcException e)
        {
            return DaemonDiagnostics.Of(e);
        }
        catch (OperationCanceledException)
        {
            return DaemonDiagnostics.Silent;
        }
        finally
        {
            _attempt = null;
        }
    }

    private void Take(BayEvent next)
    {
        _loads = next.Loads ?? _loads;
        _pads = next.Pads ?? _pads;
        if (next.Session is { } session && !IsOvertaken(session))
            _session = session;
        _backoff.Reset();
        _trouble = null;
        if (_loads is not null && _pads is not null && _session is not null)
            _begun.TrySetResult();
        // Drawing costs more than reading: what is old already is not drawn one by one, so that the page catches up.
        if (View.Loads.Live is not null)
            Changed?.Invoke();
    }

    private Diagnostic AskForFewer()
    {
        _rateHz = Math.Max(LeastRateHz, _rateHz / 2);
        return DaemonDiagnostics.Behind;
    }

    // A message that left before the answer to this page's own step.
    private bool IsOvertaken(GetSessionResponse next) => next.Session is { } session && _session?.Session is { } known && session.Id == known.Id && session.Entry < known.Entry;

    private void Tell(Diagnostic? trouble)
    {
        _trouble = trouble;
        _begun.TrySetResult();
        Changed?.Invoke();
    }
}
