using Microsoft.Extensions.Diagnostics.HealthChecks;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;

namespace ScaleLink.Daemon.Faces.Page;

/// <summary>Health over gRPC: the bay as a whole, and each pad as <c>scalelink.v1.pad.LF</c> and so on.</summary>
internal static class BayHealth
{
    public static void AddBayChecks(this IHealthChecksBuilder builder, BayConfiguration bay)
    {
        foreach (var pad in bay.Pads)
            builder.Add(new HealthCheckRegistration(Name(pad), provider => new PadCheck(provider.GetRequiredService<LiveBay>(), pad), HealthStatus.Unhealthy, ["pad"]));
        builder.Services.Configure<HealthCheckPublisherOptions>(o =>
        {
            o.Delay = TimeSpan.Zero;
            o.Period = TimeSpan.FromSeconds(1);
        });
        builder.Services.Configure<Grpc.AspNetCore.HealthChecks.GrpcHealthChecksOptions>(o =>
        {
            foreach (var pad in bay.Pads)
                o.Services.Map(Name(pad), context => context.Name == Name(pad));
        });
    }

    private static string Name(PadConfiguration pad) => $"scalelink.v1.pad.{pad.Corner}";

    private sealed class PadCheck(LiveBay bay, PadConfiguration configuration) : IHealthCheck
    {
        public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
        {
            var pad = bay.Pads.First(p => p.Corner == configuration.Corner).Snapshot();
            return Task.FromResult(pad.State == PadState.Live
                ? HealthCheckResult.Healthy()
                : HealthCheckResult.Unhealthy(pad.Faults.Count > 0 ? pad.Faults[0].Message : pad.State.ToString()));
        }
    }
}
