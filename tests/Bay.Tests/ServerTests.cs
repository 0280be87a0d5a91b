using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Net.Client;
using Grpc.Reflection.V1Alpha;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>What an integrator finds: health per pad, reflection, errors, a feed that a slow reader cannot hold up.</summary>
[Collection(Alone.Name)]
public class ServerTests
{
    [Fact]
    public async Task Health_is_told_for_each_pad()
    {
        using var bay = new BayRig();
        bay.WaitLive();
        var health = new Health.HealthClient(bay.Daemon.Channel);
        HealthCheckResponse.Types.ServingStatus Of(string service) => health.Check(new HealthCheckRequest { Service = service }).Status;
        Wait.Until(() => Of("scalelink.v1.pad.LF") == HealthCheckResponse.Types.ServingStatus.Serving, TimeSpan.FromSeconds(5), "LF serves");
        bay.Simulator.Do("""{"do":"unplug","corner":"LF"}""");
        Wait.Until(() => Of("scalelink.v1.pad.LF") == HealthCheckResponse.Types.ServingStatus.NotServing, TimeSpan.FromSeconds(5), "LF does not serve");
        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, Of("scalelink.v1.pad.RF"));
        var unknown = await Assert.ThrowsAsync<RpcException>(async () => await health.CheckAsync(new HealthCheckRequest { Service = "scalelink.v1.pad.XX" }));
        Assert.Equal(StatusCode.NotFound, unknown.StatusCode);
    }

    [Fact]
    public async Task Reflection_lists_the_services()
    {
        using var bay = new BayRig();
        using var call = new ServerReflection.ServerReflectionClient(bay.Daemon.Channel).ServerReflectionInfo();
        await call.RequestStream.WriteAsync(new ServerReflectionRequest { ListServices = "" });
        Assert.True(await call.ResponseStream.MoveNext(CancellationToken.None));
        Assert.Superset(
            new HashSet<string> { "scalelink.v1.Feed", "scalelink.v1.Pads", "scalelink.v1.PadControl", "grpc.health.v1.Health" },
            call.ResponseStream.Current.ListServicesResponse.Service.Select(s => s.Name).ToHashSet());
    }

    [Fact]
    public void A_wrong_request_gets_a_code_and_a_mend()
    {
        using var bay = new BayRig();
        var failure = Assert.Throws<RpcException>(() => bay.Daemon.Control.ZeroPads(new ZeroPadsRequest()));
        Assert.Equal(StatusCode.InvalidArgument, failure.StatusCode);
        Assert.Contains("SL-412", failure.Status.Detail);
    }

    [Fact]
    public async Task One_stream_carries_loads_at_their_pace_and_pads_once_a_second_and_at_every_change()
    {
        using var bay = new BayRig();
        bay.PutCarOn(settle: false);
        using var call = bay.Daemon.Feed.WatchBay(new WatchBayRequest { RateHz = 10 });
        var (loads, pads) = (new List<Loads>(), new List<ListPadsResponse>());
        var isPulled = false;
        while (pads.LastOrDefault()?.Pads[1].State != PadState.Absent && await call.ResponseStream.MoveNext(CancellationToken.None))
        {
            var next = call.ResponseStream.Current;
            if (next.EventCase == BayEvent.EventOneofCase.Loads)
                loads.Add(next.Loads);
            else if (next.EventCase == BayEvent.EventOneofCase.Pads)
                pads.Add(next.Pads);
            if (loads.Count < 30 || isPulled)
                continue;
            isPulled = true;
            bay.Simulator.Do("""{"do":"unplug","corner":"RF"}""");
        }

        Assert.InRange(pads.Count, 3, 10);
        Assert.Equal(4, pads[0].Pads.Count);
        // Every second reading of twenty a second; a change of verdict comes out of turn.
        Assert.InRange(loads[10].Stamp.Seq - loads[0].Stamp.Seq, 17UL, 22UL);
    }

    [Fact]
    public async Task A_pace_that_is_not_offered_is_refused_on_both_feeds()
    {
        using var bay = new BayRig();
        foreach (var call in new Func<Task>[]
        {
            async () => await bay.Daemon.Feed.WatchBay(new WatchBayRequest { RateHz = 21 }).ResponseStream.MoveNext(CancellationToken.None),
            async () => await bay.Daemon.Feed.WatchLoads(new WatchLoadsRequest { RateHz = 0 }).ResponseStream.MoveNext(CancellationToken.None),
        })
        {
            var failure = await Assert.ThrowsAsync<RpcException>(call);
            Assert.Contains("SL-411", failure.Status.Detail);
        }
    }

    [Fact]
    public async Task A_reader_that_stops_reading_slows_nobody()
    {
        using var bay = new BayRig();
        bay.PutCarOn(settle: false);
        // Twenty streams that are opened and never read.
        using var channel = GrpcChannel.ForAddress(bay.Daemon.Channel.Target.StartsWith("http", StringComparison.Ordinal) ? bay.Daemon.Channel.Target : $"http://{bay.Daemon.Channel.Target}");
        var lazy = Enumerable.Range(0, 20).Select(_ => new Feed.FeedClient(channel).WatchLoads(new WatchLoadsRequest { RateHz = 20 })).ToList();
        using var watch = new LoadsWatch(bay.Daemon);
        await Task.Delay(TimeSpan.FromSeconds(4));
        var received = watch.Received;
        Assert.InRange(received.Count, 70, 90);
        Assert.All(received, r => Assert.InRange(r.Loads.Stamp.AgeMs, 0, 500));
        Assert.Equal(0ul, received[^1].Loads.Dropped);
        lazy.ForEach(c => c.Dispose());
    }

    [Fact]
    public void Numbers_of_readings_rise_by_one_and_age_is_small()
    {
        using var bay = new BayRig();
        using var watch = new LoadsWatch(bay.Daemon);
        Wait.Until(() => watch.Received.Count > 40, TimeSpan.FromSeconds(10), "forty readings");
        var seqs = watch.Received.Select(r => r.Loads.Stamp.Seq).ToList();
        Assert.Equal(Enumerable.Range(0, seqs.Count).Select(k => seqs[0] + (ulong)k), seqs);
        Assert.All(watch.Received, r => Assert.Equal(750, r.Loads.Stamp.MaxAgeMs));
    }
}
