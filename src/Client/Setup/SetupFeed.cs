using System.Runtime.CompilerServices;
using Grpc.Core;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Setup;

/// <summary>How far the setting up is, as the daemon tells it.</summary>
internal static class SetupFeed
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>The state now; nothing when the daemon ended in that moment.</summary>
    /// <exception cref="RpcException">Nobody is there, or it has a bay.</exception>
    public static async Task<SetupState?> Now(DaemonConnection daemon, CancellationToken stop)
    {
        using var call = daemon.Setup.WatchSetup(new WatchSetupRequest(), deadline: DateTime.SpecifyKind(daemon.Time.GetUtcNow().UtcDateTime + Patience, DateTimeKind.Utc), cancellationToken: stop);
        return await call.ResponseStream.MoveNext(stop) ? call.ResponseStream.Current : null;
    }

    /// <summary>Every state, until the daemon goes over to the bay.</summary>
    /// <exception cref="ClientException">The daemon is gone.</exception>
    public static async IAsyncEnumerable<SetupState> Follow(DaemonConnection daemon, [EnumeratorCancellation] CancellationToken stop)
    {
        using var call = daemon.Setup.WatchSetup(new WatchSetupRequest(), cancellationToken: stop);
        while (await Next(call, daemon, stop))
            yield return call.ResponseStream.Current;
    }

    private static async Task<bool> Next(AsyncServerStreamingCall<SetupState> call, DaemonConnection daemon, CancellationToken stop)
    {
        try
        {
            return await call.ResponseStream.MoveNext(stop);
        }
        catch (RpcException e) when (e.StatusCode == StatusCode.Cancelled && stop.IsCancellationRequested)
        {
            throw new OperationCanceledException(e.Message, e, stop);
        }
        catch (RpcException e)
        {
            throw new ClientException(DiagnosticReader.Read(e, daemon.Name), e);
        }
    }
}
