using Grpc.Core;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Timing.Tests.Loss;

/// <summary>Listens to every sample of a bay for a while, and holds the pads' own numbering and the daemon's counters against a loss.</summary>
internal static class LossCheck
{
    /// <summary>How many samples came; fails when one is missing, came twice, or was damaged.</summary>
    public static async Task<long> Run(BayRig bay, TimeSpan span)
    {
        var before = bay.Daemon.Pads.ListPads(new ListPadsRequest());
        var seen = await Listen(bay, span);
        foreach (var (pad, old) in bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.Zip(before.Pads))
            Assert.Equal((old.Counters.MissedSamples, old.Counters.RepeatedSamples, old.Counters.BadFrames), (pad.Counters.MissedSamples, pad.Counters.RepeatedSamples, pad.Counters.BadFrames));
        return seen;
    }

    private static async Task<long> Listen(BayRig bay, TimeSpan span)
    {
        using var stop = new CancellationTokenSource(span);
        var next = new Dictionary<Corner, uint>();
        var seen = 0L;
        try
        {
            using var call = bay.Daemon.Feed.WatchSamples(new WatchSamplesRequest(), cancellationToken: stop.Token);
            await foreach (var batch in call.ResponseStream.ReadAllAsync(stop.Token))
            {
                Assert.Equal(0ul, batch.Dropped);
                foreach (var sample in batch.Samples)
                {
                    if (next.TryGetValue(batch.Corner, out var expected))
                        Assert.Equal(expected, sample.PadSeq);
                    next[batch.Corner] = sample.PadSeq + 1;
                    seen++;
                }
            }
        }
        catch (RpcException e) when (e.StatusCode == StatusCode.Cancelled)
        {
            // The time is up.
        }

        return seen;
    }
}
