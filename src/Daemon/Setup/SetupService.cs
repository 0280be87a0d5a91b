using Grpc.Core;
using ScaleLink.Daemon.Contract;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Setup;

/// <summary>How far the setting up is, over gRPC.</summary>
internal sealed class SetupService(SetupDesk desk, SetupSettings settings, TimeProvider time, IHostApplicationLifetime lifetime) : Wire.Setup.SetupBase
{
    public override async Task WatchSetup(Wire.WatchSetupRequest request, IServerStreamWriter<Wire.SetupState> responses, ServerCallContext context)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(context.CancellationToken, lifetime.ApplicationStopping);
        using var changes = new ChangeNudges(nudge => desk.Changed += nudge, nudge => desk.Changed -= nudge, time);
        try
        {
            await foreach (var _ in changes.Items.ReadAllAsync(either.Token))
                await responses.WriteAsync(SetupMapping.ToWire(desk.Now, settings.BayFile), either.Token);
        }
        catch (OperationCanceledException) when (lifetime.ApplicationStopping.IsCancellationRequested)
        {
            // The bay begins; whoever watched has been told that its file is written.
        }
    }
}
