using System.Diagnostics;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Timing.Tests;

/// <summary>Pads that go and come back. Limits: the project's own requirement.</summary>
[Trait("needs", "bay")]
public class UnplugTests(SettledBay settled) : IClassFixture<SettledBay>
{
    private static readonly TimeSpan AtOnce = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan Silence = TimeSpan.FromMilliseconds(500 + 250);
    private static readonly TimeSpan Back = TimeSpan.FromSeconds(3);

    // SCALELINK_LONG=1 runs the long form.
    private static readonly int Cycles = Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1" ? 200 : 8;

    [Fact]
    public void A_hang_up_shows_at_once_and_the_pad_returns_within_3_s_of_the_replug()
    {
        var bay = settled.Rig;
        using var watch = new LoadsWatch(bay.Daemon);
        watch.Until(Stopwatch.GetTimestamp(), l => l.CrossWeightPercent is not null, Wait.Patience, "the feed runs");

        var pulled = Stopwatch.GetTimestamp();
        bay.Simulator.Do("""{"do":"unplug","corner":"RF"}""");
        Assert.True(watch.Until(pulled, l => l.Corners[1].LoadKg is null, TimeSpan.FromSeconds(5), "RF absent") < AtOnce);
        var absent = watch.Newest!;
        Assert.Equal(Verdict.Incomplete, absent.Verdict);
        Assert.Null(absent.CrossWeightPercent);
        Assert.Null(absent.TotalKg);
        Assert.Contains(absent.Corners[1].Faults, f => f.Code is "SL-105" or "SL-101");

        var plugged = Stopwatch.GetTimestamp();
        bay.Simulator.Do("""{"do":"replug","corner":"RF"}""");
        Assert.True(watch.Until(plugged, l => l.Corners[1].LoadKg is not null, TimeSpan.FromSeconds(10), "RF back") < Back);
        bay.Settled();
    }

    [Fact]
    public void A_pad_that_falls_silent_shows_within_three_quarters_of_a_second()
    {
        var bay = settled.Rig;
        using var watch = new LoadsWatch(bay.Daemon);
        watch.Until(Stopwatch.GetTimestamp(), l => l.CrossWeightPercent is not null, Wait.Patience, "the feed runs");

        var frozen = Stopwatch.GetTimestamp();
        bay.Simulator.Do("""{"do":"freeze","corner":"LR"}""");
        Assert.True(watch.Until(frozen, l => l.Corners[2].LoadKg is null, TimeSpan.FromSeconds(5), "LR absent") < Silence);
        Assert.Contains(watch.Newest!.Corners[2].Faults, f => f.Code == "SL-106");
        Assert.Equal(PadState.Silent, bay.Daemon.Pad("LR").State);
        Assert.Null(bay.Daemon.Pad("LR").LoadKg);
        bay.Simulator.Do("""{"do":"freeze","corner":"LR","on":false}""");
        bay.Settled();
    }

    [Fact]
    public void Many_replugs_leak_neither_threads_nor_handles()
    {
        var bay = settled.Rig;
        Replug(bay, 2);
        var (threads, handles) = Held(bay);
        Replug(bay, Cycles);
        var (threadsAfter, handlesAfter) = Held(bay);
        // The runtime's pool may breathe by a few threads; a leak would add at least one a cycle.
        Assert.InRange(threadsAfter, 0, threads + 4);
        Assert.InRange(handlesAfter, 0, handles + 4);
    }

    private static void Replug(BayRig bay, int times)
    {
        for (var k = 0; k < times; k++)
        {
            var corner = Simulator.Corners[k % 4];
            var before = bay.Daemon.Pad(corner).Counters.Opened;
            bay.Simulator.Do($$"""{"do":"unplug","corner":"{{corner}}"}""");
            Wait.Until(() => bay.Daemon.Pad(corner).State == PadState.Absent, TimeSpan.FromSeconds(2), $"{corner} absent");
            bay.Simulator.Do($$"""{"do":"replug","corner":"{{corner}}"}""");
            Wait.Until(() => bay.Daemon.Pad(corner) is { State: PadState.Live } p && p.Counters.Opened == before + 1, Back, $"{corner} back, cycle {k}");
        }
    }

    private static (int Threads, int Handles) Held(BayRig bay)
    {
        if (!OperatingSystem.IsLinux())
            return (0, 0);
        var proc = $"/proc/{bay.Daemon.Process.Id}";
        return (Directory.GetDirectories($"{proc}/task").Length, Directory.GetFiles($"{proc}/fd").Length);
    }
}
