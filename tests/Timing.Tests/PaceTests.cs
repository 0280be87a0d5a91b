using Grpc.Net.Client;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Timing.Tests;

/// <summary>The pace of the feeds, and a slow reader that holds up nobody else.</summary>
[Trait("needs", "bay")]
[Collection(Alone.Name)]
public class PaceTests(SettledBay settled) : IClassFixture<SettledBay>
{
    [Fact]
    public async Task One_stream_carries_loads_at_their_pace_and_pads_once_a_second_and_at_every_change()
    {
        var bay = settled.Rig;
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

        bay.Simulator.Do("""{"do":"replug","corner":"RF"}""");
        bay.Settled();
        Assert.InRange(pads.Count, 3, 10);
        Assert.Equal(4, pads[0].Pads.Count);
        // Every second reading of twenty a second; a change of verdict comes out of turn.
        Assert.InRange(loads[10].Stamp.Seq - loads[0].Stamp.Seq, 17UL, 22UL);
    }

    [Fact]
    public void A_reader_that_stops_reading_slows_nobody()
    {
        var bay = settled.Rig;
        // Twenty streams that are opened and never read.
        using var channel = GrpcChannel.ForAddress(bay.Daemon.Channel.Target.StartsWith("http", StringComparison.Ordinal) ? bay.Daemon.Channel.Target : $"http://{bay.Daemon.Channel.Target}");
        var lazy = Enumerable.Range(0, 20).Select(_ => new Feed.FeedClient(channel).WatchLoads(new WatchLoadsRequest { RateHz = 20 })).ToList();
        using var watch = new LoadsWatch(bay.Daemon);
        var took = Wait.Until(() => watch.Received.Count >= 80, TimeSpan.FromSeconds(20), "80 readings");
        var received = watch.Received;
        Assert.InRange(80 / took.TotalSeconds, 17.5, 22.5);
        Assert.All(received, r => Assert.InRange(r.Loads.Stamp.AgeMs, 0, 500));
        Assert.Equal(0ul, received[^1].Loads.Dropped);
        lazy.ForEach(c => c.Dispose());
    }

    [Fact]
    public void Numbers_of_readings_rise_by_one_and_age_is_small()
    {
        var bay = settled.Rig;
        using var watch = new LoadsWatch(bay.Daemon);
        Wait.Until(() => watch.Received.Count > 40, TimeSpan.FromSeconds(10), "forty readings");
        var seqs = watch.Received.Select(r => r.Loads.Stamp.Seq).ToList();
        Assert.Equal(Enumerable.Range(0, seqs.Count).Select(k => seqs[0] + (ulong)k), seqs);
        Assert.All(watch.Received, r => Assert.Equal(750, r.Loads.Stamp.MaxAgeMs));
    }
}
