using System.Diagnostics;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Timing.Tests;

/// <summary>
/// The daemon does not get the processor for a while (SIGSTOP), and the car is raised meanwhile: a laptop that slept, a machine that hung. It goes on by
/// itself, and what it shows then is what stands there now. Three seconds here; 10 and 60 with SCALELINK_LONG=1. The project's own requirement.
/// </summary>
[Trait("needs", "bay")]
public sealed class PauseTests(ITestOutputHelper output)
{
    // Messages that lay in buffers on either side arrive at once, and one more may have been under way.
    private static readonly TimeSpan Delivered = TimeSpan.FromSeconds(1);

    public static TheoryData<int> Pauses() => Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1" ? [10, 60] : [3];

    [Theory, MemberData(nameof(Pauses))]
    public void After_a_pause_the_bay_shows_what_stands_there_now(int seconds)
    {
        using var bay = new BayRig();
        bay.PutCarOn();
        var settled = bay.Settled();
        using var watch = new LoadsWatch(bay.Daemon);
        Wait.Until(() => watch.Newest?.Verdict == Verdict.Settled, Wait.Patience, "the feed says settled");

        bay.Daemon.Process.Suspend();
        bay.Simulator.DoAndWait("""{"do":"jack","mm":150}""");
        Thread.Sleep(TimeSpan.FromSeconds(seconds));
        var goesOn = Stopwatch.GetTimestamp();
        bay.Daemon.Process.Resume();

        var raised = watch.Until(goesOn, loads => loads.Verdict == Verdict.Raised, Wait.Patience, "raised");
        Thread.Sleep(Delivered);
        var stale = watch.Received.Where(r => Stopwatch.GetElapsedTime(goesOn, r.At) > Delivered && r.Loads.Verdict == Verdict.Settled && r.Loads.TotalKg is { } total && total.Estimate > settled.TotalKg.Estimate / 2).ToList();
        Assert.True(stale.Count == 0, $"a car that is no longer there was shown as settled {stale.Count} times, at last after {(stale.Count == 0 ? default : Stopwatch.GetElapsedTime(goesOn, stale[^1].At)).TotalSeconds:0.0} s");
        // What found no room in the system's buffers is told as lost, and nothing else is; then that goes too.
        Assert.All(bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.SelectMany(p => p.Faults), f => Assert.Equal("SL-210", f.Code));
        Wait.Until(() => bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.All(p => p.State == PadState.Live && p.Faults.Count == 0), Wait.Patience, "all pads live and without a fault");

        var lowered = Stopwatch.GetTimestamp();
        bay.Simulator.DoAndWait("""{"do":"lower"}""");
        var again = watch.Until(lowered, loads => loads.WeighingReady, Wait.Patience, "settled again");
        Assert.Equal(settled.TotalKg.Estimate, watch.Newest!.TotalKg.Estimate, 0.5);
        output.WriteLine($"stopped for {seconds} s: raised after {raised.TotalSeconds:0.00} s, settled {again.TotalSeconds:0.0} s after the car was lowered");
    }
}
