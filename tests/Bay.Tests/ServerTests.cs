using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Net.Client;
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

    // RFC 9113, section 5.1.2, would let the caller wait.
    [Fact]
    public async Task A_stream_too_many_on_one_connection_is_refused_with_a_code()
    {
        const int Served = 100;
        using var one = GrpcChannel.ForAddress($"http://127.0.0.1:{plain.Rig.GrpcPort}", new GrpcChannelOptions { HttpHandler = new SocketsHttpHandler { EnableMultipleHttp2Connections = false } });
        var feed = new Feed.FeedClient(one);
        AsyncServerStreamingCall<Loads> Watch() => feed.WatchLoads(new WatchLoadsRequest { RateHz = 0.1 });
        async Task<RpcException> Refusal() => await Assert.ThrowsAsync<RpcException>(async () => await Watch().ResponseStream.MoveNext().WaitAsync(Wait.Patience, TestContext.Current.CancellationToken));

        var calls = Enumerable.Range(0, Served).Select(_ => Watch()).ToList();
        foreach (var call in calls)
            Assert.True(await call.ResponseStream.MoveNext().WaitAsync(Wait.Patience, TestContext.Current.CancellationToken));
        var refusals = await Task.WhenAll(Enumerable.Range(0, 5 * Served).Select(_ => Refusal()));
        Assert.All(refusals, r => Assert.Equal(StatusCode.ResourceExhausted, r.StatusCode));
        Assert.Contains("SL-418", refusals[0].Status.Detail);
        Assert.NotEmpty(feed.GetClock(new GetClockRequest()).StartId);
        // Another connection is not concerned, and one that ends makes room.
        Assert.True(await plain.Rig.Daemon.Feed.WatchLoads(new WatchLoadsRequest()).ResponseStream.MoveNext());
        calls[0].Dispose();
        Wait.Until(() => Watch().ResponseStream.MoveNext().ContinueWith(t => t.IsCompletedSuccessfully).Result, Wait.Patience, "a stream in the place of the one that ended");
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
