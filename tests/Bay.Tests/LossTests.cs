using Grpc.Core;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>Every sample arrives once: the pads' own numbering proves it.</summary>
public class LossTests
{
    // SCALELINK_LONG=1 runs the long form: ten minutes.
    private static readonly TimeSpan Span = Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1" ? TimeSpan.FromMinutes(10) : TimeSpan.FromSeconds(8);

    [Fact]
    public async Task No_sample_is_lost_or_repeated_at_4_x_320_a_second()
    {
        using var bay = new BayRig("default", rate: 320);
        bay.Zero();
        var before = bay.Daemon.Pads.ListPads(new ListPadsRequest());
        using var stop = new CancellationTokenSource(Span);
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

        Assert.InRange(seen, 0.95 * 4 * 320 * Span.TotalSeconds - 640, 1.02 * 4 * 320 * Span.TotalSeconds + 640);
        foreach (var (pad, old) in bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.Zip(before.Pads))
        {
            Assert.Equal((old.Counters.MissedSamples, old.Counters.RepeatedSamples, old.Counters.BadFrames), (pad.Counters.MissedSamples, pad.Counters.RepeatedSamples, pad.Counters.BadFrames));
        }
    }
}
