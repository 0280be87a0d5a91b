using System.Collections.Concurrent;
using Grpc.Core;

namespace Bay.Tests.Replay;

/// <summary>Keeps every message of a stream.</summary>
internal sealed class StreamWatch<T> : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly ConcurrentQueue<T> _received = new();
    private readonly Task _reading;

    public StreamWatch(Func<CancellationToken, AsyncServerStreamingCall<T>> call) => _reading = Read(call);

    public IReadOnlyList<T> Received => [.. _received];

    public void Dispose()
    {
        _stop.Cancel();
        _reading.Wait(TimeSpan.FromSeconds(5));
        _stop.Dispose();
    }

    private async Task Read(Func<CancellationToken, AsyncServerStreamingCall<T>> call)
    {
        try
        {
            using var calling = call(_stop.Token);
            await foreach (var message in calling.ResponseStream.ReadAllAsync(_stop.Token))
                _received.Enqueue(message);
        }
        catch (Exception e) when (e is RpcException or OperationCanceledException or ObjectDisposedException)
        {
            // The watch was ended: what was received stays. Which of the three says so depends on where the reader was just then.
        }
    }
}
