using System.Collections.Concurrent;
using Grpc.Core;
using Grpc.Core.Interceptors;
using ScaleLink.Daemon.Contract;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>
/// Refuses a stream that is one too many on its connection. HTTP/2 would let the caller wait for a place without a word (RFC 9113, section 5.1.2), and a
/// place comes only when another stream ends.
/// </summary>
internal sealed class StreamLimit : Interceptor
{
    /// <summary>Streams of one connection: far more than a program needs that shows a whole bay, few enough that one program cannot occupy the daemon.</summary>
    public const int PerConnection = 100;

    /// <summary>What HTTP/2 lets through: what is refused here needs a place for a moment, and so do calls that are no streams.</summary>
    public const int Transport = 4 * PerConnection;

    private readonly ConcurrentDictionary<string, int> _open = new(StringComparer.Ordinal);

    public override async Task ServerStreamingServerHandler<TRequest, TResponse>(
        TRequest request, IServerStreamWriter<TResponse> responseStream, ServerCallContext context, ServerStreamingServerMethod<TRequest, TResponse> continuation) =>
        await Counted(context, () => continuation(request, responseStream, context));

    public override async Task DuplexStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream, IServerStreamWriter<TResponse> responseStream, ServerCallContext context, DuplexStreamingServerMethod<TRequest, TResponse> continuation) =>
        await Counted(context, () => continuation(requestStream, responseStream, context));

    private async Task Counted(ServerCallContext context, Func<Task> stream)
    {
        var connection = context.GetHttpContext().Connection.Id;
        try
        {
            if (_open.AddOrUpdate(connection, 1, (_, open) => open + 1) > PerConnection)
                throw ApiErrors.TooMuch(ServiceCodes.TooManyStreams, $"This connection has {PerConnection} streams already, and the daemon serves no more over one.",
                    "End calls that nobody reads, take loads, pads and session in one by Feed.WatchBay, or open a second connection.");
            await stream();
        }
        finally
        {
            Ended(connection);
        }
    }

    // Connections come and go for months: one without streams leaves nothing behind.
    private void Ended(string connection)
    {
        if (_open.AddOrUpdate(connection, 0, (_, open) => open - 1) == 0)
            _open.TryRemove(new KeyValuePair<string, int>(connection, 0));
    }
}
