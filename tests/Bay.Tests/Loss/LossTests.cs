using System.Diagnostics;
using Shared.Rig;

namespace Bay.Tests.Loss;

/// <summary>Every sample arrives once: the pads' own numbering proves it.</summary>
[Collection(Alone.Name)]
public class LossTests(ITestOutputHelper output)
{
    private const int Rate = 320;

    // SCALELINK_LONG=1 runs the long form: ten minutes.
    private static readonly bool IsLong = Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1";
    private static readonly TimeSpan Span = IsLong ? TimeSpan.FromMinutes(10) : TimeSpan.FromSeconds(8);

    [Fact]
    public async Task No_sample_is_lost_or_repeated_at_4_x_320_a_second()
    {
        using var bay = new BayRig("default", rate: Rate);
        bay.Zero();
        AssertAll(await LossCheck.Run(bay, Span), pads: 4, Span);
    }

    // A daemon has one bay of four pads; a workshop with two bays runs two. Run it with -c Release for what it costs.
    [Fact]
    public async Task No_sample_is_lost_or_repeated_at_8_x_320_a_second_on_two_bays_of_one_machine()
    {
        using BayRig one = new("default", rate: Rate), two = new("default", rate: Rate, seed: 2);
        one.Zero();
        two.Zero();
        var span = IsLong ? TimeSpan.FromMinutes(5) : TimeSpan.FromSeconds(6);
        var (busy, start) = (Processors(one, two), Stopwatch.GetTimestamp());
        var seen = await Task.WhenAll(LossCheck.Run(one, span), LossCheck.Run(two, span));
        var share = (Processors(one, two) - busy) / Stopwatch.GetElapsedTime(start);
        output.WriteLine($"{seen.Sum()} samples of 8 pads, none lost; the two daemons took {100 * share:0.0} % of one processor");
        AssertAll(seen.Sum(), pads: 8, span);
    }

    private static TimeSpan Processors(params BayRig[] bays) => bays.Aggregate(TimeSpan.Zero, (sum, bay) =>
    {
        using var daemon = Process.GetProcessById(bay.Daemon.Process.Id);
        return sum + daemon.TotalProcessorTime;
    });

    private static void AssertAll(long seen, int pads, TimeSpan span) =>
        Assert.InRange(seen, 0.95 * pads * Rate * span.TotalSeconds - 160 * pads, 1.02 * pads * Rate * span.TotalSeconds + 160 * pads);
}
