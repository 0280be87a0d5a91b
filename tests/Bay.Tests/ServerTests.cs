using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Reflection.V1Alpha;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>What an integrator finds: health per pad, reflection, errors.</summary>
[Collection(PlainCollection.Name)]
public class ServerTests(PlainBay plain)
{
    [Fact]
    public async Task Health_is_told_for_each_pad()
    {
        var health = new Health.HealthClient(plain.Rig.Daemon.Channel);
        HealthCheckResponse.Types.ServingStatus Of(string service) => health.Check(new HealthCheckRequest { Service = service }).Status;
        Wait.Until(() => Of("scalelink.v1.pad.LF") == HealthCheckResponse.Types.ServingStatus.Serving, Wait.Patience, "LF serves");
        plain.Rig.Simulator.Do("""{"do":"unplug","corner":"LF"}""");
        Wait.Until(() => Of("scalelink.v1.pad.LF") == HealthCheckResponse.Types.ServingStatus.NotServing, Wait.Patience, "LF does not serve");
        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, Of("scalelink.v1.pad.RF"));
        plain.Rig.Simulator.Do("""{"do":"replug","corner":"LF"}""");
        Wait.Until(() => Of("scalelink.v1.pad.LF") == HealthCheckResponse.Types.ServingStatus.Serving, Wait.Patience, "LF serves again");
        var unknown = await Assert.ThrowsAsync<RpcException>(async () => await health.CheckAsync(new HealthCheckRequest { Service = "scalelink.v1.pad.XX" }));
        Assert.Equal(StatusCode.NotFound, unknown.StatusCode);
    }

    [Fact]
    public async Task Reflection_lists_the_services()
    {
        using var call = new ServerReflection.ServerReflectionClient(plain.Rig.Daemon.Channel).ServerReflectionInfo();
        await call.RequestStream.WriteAsync(new ServerReflectionRequest { ListServices = "" });
        Assert.True(await call.ResponseStream.MoveNext(CancellationToken.None));
        Assert.Superset(
            new HashSet<string> { "scalelink.v1.Feed", "scalelink.v1.Pads", "scalelink.v1.PadControl", "grpc.health.v1.Health" },
            call.ResponseStream.Current.ListServicesResponse.Service.Select(s => s.Name).ToHashSet());
    }

    [Fact]
    public void A_wrong_request_gets_a_code_and_a_remedy()
    {
        var failure = Assert.Throws<RpcException>(() => plain.Rig.Daemon.Control.ZeroPads(new ZeroPadsRequest()));
        Assert.Equal(StatusCode.InvalidArgument, failure.StatusCode);
        Assert.Contains("SL-412", failure.Status.Detail);
    }

    [Fact]
    public async Task A_pace_that_is_not_offered_is_refused_on_both_feeds()
    {
        foreach (var call in new Func<Task>[]
        {
            async () => await plain.Rig.Daemon.Feed.WatchBay(new WatchBayRequest { RateHz = 21 }).ResponseStream.MoveNext(CancellationToken.None),
            async () => await plain.Rig.Daemon.Feed.WatchLoads(new WatchLoadsRequest { RateHz = 0 }).ResponseStream.MoveNext(CancellationToken.None),
        })
        {
            var failure = await Assert.ThrowsAsync<RpcException>(call);
            Assert.Contains("SL-411", failure.Status.Detail);
        }
    }
}
