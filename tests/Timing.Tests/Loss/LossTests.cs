using System.Diagnostics;
using Shared.Rig;

namespace Timing.Tests.Loss;

/// <summary>Every sample arrives once: the pads' own numbering calibrates it.</summary>
[Trait("needs", "bay")]
[Collection(Alone.Name)]
public class LossTests(BusyBay bay, ITestOutputHelper output) : IClassFixture<BusyBay>
{

    // SCALELINK_LONG=1 runs the long form: ten minutes.
    private static readonly bool IsLong = Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1";
    private static readonly TimeSpan Span = IsLong ? TimeSpan.FromMinutes(10) : TimeSpan.FromSeconds(8);

    [Fact]
    public async Task No_sample_is_lost_or_repeated_at_4_x_320_a_second()
    {
        AssertAll(await LossCheck.Run(bay.Rig, Span), pads: 4, Span);
    }

    // A daemon has one bay of four pads; a workshop with two bays runs two. Run it with -c Release for what it costs.
    [Fact]
    public async Task No_sample_is_lost_or_repeated_at_8_x_320_a_second_on_two_bays_of_one_machine()
    {
        var one = bay.Rig;
        using var two = new BayRig("default", rate: BusyBay.Rate, seed: 2);
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
        Assert.InRange(seen, 0.95 * pads * BusyBay.Rate * span.TotalSeconds - 160 * pads, 1.02 * pads * BusyBay.Rate * span.TotalSeconds + 160 * pads);
}

/// <summary>Pads with every imperfection at the highest rate.</summary>
public sealed class BusyBay : IDisposable
{
    public const int Rate = 320;

    public BusyBay() => Rig.Zero();

    internal BayRig Rig { get; } = new("default", rate: Rate);

    public void Dispose() => Rig.Dispose();
}
