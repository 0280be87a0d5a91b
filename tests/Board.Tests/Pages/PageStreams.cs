using Grpc.Core;
using Grpc.Net.Client;
using Grpc.Net.Client.Web;
using ScaleLink.Api.V1;

namespace Board.Tests.Pages;

/// <summary>Streams as so many pages open them, each over a connection of its own, without the cost of drawing.</summary>
internal sealed class PageStreams : IAsyncDisposable
{
    private const double FullRateHz = 10;

    private readonly CancellationTokenSource _end = new();
    private readonly List<GrpcChannel> _channels = [];
    private readonly List<Task> _readers = [];
    private readonly List<TaskCompletionSource> _begun = [];
    private long _updates;

    public PageStreams(int port, int count)
    {
        for (var k = 0; k < count; k++)
        {
            var channel = GrpcChannel.ForAddress($"http://127.0.0.1:{port}", new GrpcChannelOptions
            {
                HttpHandler = new GrpcWebHandler(GrpcWebMode.GrpcWeb, new SocketsHttpHandler()),
                HttpVersion = System.Net.HttpVersion.Version11,
                DisposeHttpClient = true,
            });
            var begun = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            _channels.Add(channel);
            _begun.Add(begun);
            _readers.Add(Read(new Feed.FeedClient(channel), begun));
        }
    }

    /// <summary>Loads that have come so far, on all streams.</summary>
    public long Updates => Interlocked.Read(ref _updates);

    /// <summary>Done once loads have come on every stream.</summary>
    public Task Begun() => Task.WhenAll(_begun.Select(b => b.Task)).WaitAsync(TimeSpan.FromSeconds(30));

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        await Task.WhenAll(_readers);
        _channels.ForEach(c => c.Dispose());
        _end.Dispose();
    }

    private async Task Read(Feed.FeedClient daemon, TaskCompletionSource begun)
    {
        try
        {
            using var call = daemon.WatchBay(new WatchBayRequest { RateHz = FullRateHz }, cancellationToken: _end.Token);
            await foreach (var next in call.ResponseStream.ReadAllAsync(_end.Token))
            {
                if (next.Loads is null)
                    continue;
                Interlocked.Increment(ref _updates);
                begun.TrySetResult();
            }
        }
        catch (Exception e) when (e is RpcException { StatusCode: StatusCode.Cancelled } or OperationCanceledException)
        {
            // The end, as asked.
        }
        catch (RpcException e)
        {
            begun.TrySetException(e);
        }
    }
}
