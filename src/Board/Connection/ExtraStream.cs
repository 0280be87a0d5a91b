using Grpc.Core;

namespace ScaleLink.Board.Connection;

/// <summary>A stream besides the page's one, open only while a view that needs it is seen; made anew when it breaks.</summary>
internal sealed class ExtraStream<T>(BayFeed feed, TimeProvider time, Func<CancellationToken, AsyncServerStreamingCall<T>> open) : IDisposable
{
    private readonly CancellationTokenSource _end = new();
    private readonly Backoff _backoff = new();

    /// <summary>The newest message; absent before the first.</summary>
    public T? Newest { get; private set; }

    /// <summary>What keeps messages away; absent while they come.</summary>
    public Diagnostic? Trouble { get; private set; }

    /// <summary>A message came, or none comes any more.</summary>
    public event Action? Changed;

    /// <summary>Begins; never fails.</summary>
    public void Start() => _ = Keep(_end.Token);

    /// <summary>Takes what an answer to a call shows: sooner than the stream tells.</summary>
    public void Take(T message)
    {
        (Newest, Trouble) = (message, null);
        Changed?.Invoke();
    }

    public void Dispose()
    {
        _end.Cancel();
        _end.Dispose();
    }

    private async Task Keep(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                await feed.Seen(stop);
                await Read(stop);
                Trouble = DaemonDiagnostics.Ended;
            }
            catch (RpcException e)
            {
                Trouble = DaemonDiagnostics.Of(e);
            }
            catch (OperationCanceledException)
            {
                Trouble = DaemonDiagnostics.Silent;
            }

            if (stop.IsCancellationRequested)
                return;
            Changed?.Invoke();
            await Task.Delay(_backoff.Next(), time, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task Read(CancellationToken stop)
    {
        using var seen = CancellationTokenSource.CreateLinkedTokenSource(stop);
        void Leave() => seen.Cancel();
        feed.Unseen += Leave;
        try
        {
            using var call = open(seen.Token);
            while (await call.ResponseStream.MoveNext(seen.Token))
            {
                _backoff.Reset();
                Take(call.ResponseStream.Current);
            }
        }
        finally
        {
            feed.Unseen -= Leave;
        }
    }
}
