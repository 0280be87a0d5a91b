using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>Converters that stop while samples go on, of pads of every protocol under a car at rest. The project's own requirement.</summary>
[Trait("needs", "bay")]
public class FreezeTests
{
    private static readonly string[] Frozen = ["LF", "RF", "LR"];

    [Fact]
    public void A_pad_that_has_shown_noise_and_gives_one_number_is_named_and_gives_no_load_until_it_goes_again()
    {
        using var bay = new BayRig("noise,quantisation", speak: "LF=pad-frames,RF=modbus,LR=text,RR=modbus");
        bay.PutCarOn();
        bay.Settled();
        Wait.Until(() => Simulator.Corners.All(c => bay.Daemon.Pad(c).FreezeWatch == FreezeWatch.ByNoise), Wait.Patience, () => $"noise is known; {string.Join("\n", Simulator.Corners.Select(bay.Daemon.Pad))}");
        foreach (var corner in Frozen)
            bay.Simulator.Do($$"""{"do":"freeze-value","corner":"{{corner}}"}""");
        Wait.Until(() => Frozen.All(c => bay.Daemon.Pad(c) is { State: PadState.Live, LoadKg: null } pad && pad.Faults.Any(f => f.Code == "SL-216")), Wait.Patience, () => $"named; {string.Join("\n", Frozen.Select(bay.Daemon.Pad))}");
        Assert.Empty(bay.Daemon.Pad("RR").Faults);
        Assert.Equal(Verdict.Incomplete, bay.Daemon.Loads()!.Verdict);
        foreach (var corner in Frozen)
            bay.Simulator.Do($$"""{"do":"freeze-value","corner":"{{corner}}","on":false}""");
        Wait.Until(() => Frozen.All(c => bay.Daemon.Pad(c) is { LoadKg: not null, Faults.Count: 0 }), Wait.Patience, () => $"back; {string.Join("\n", Frozen.Select(bay.Daemon.Pad))}");
        bay.Settled();
    }

    // Without noise nothing of a pad's own shows it: the others tell, once somebody moves the car.
    [Fact]
    public void A_pad_without_noise_is_named_when_all_the_others_move()
    {
        using var bay = new BayRig(speak: "RR=modbus");
        bay.PutCarOn();
        bay.Settled();
        Assert.Equal(FreezeWatch.BySiblings, bay.Daemon.Pad("RR").FreezeWatch);
        bay.Simulator.Do("""{"do":"freeze-value","corner":"RR"}""");
        bay.Simulator.DoAndWait("""{"do":"turn","corner":"LF","turns":4}""");
        bay.Simulator.Do("""{"do":"lean","corner":"RF","kg":40,"seconds":6}""");
        Wait.Until(() => bay.Daemon.Pad("RR").Faults.Any(f => f.Code == "SL-216"), Wait.Patience, () => $"named; {bay.Daemon.Pad("RR")}");
        Assert.All(["LF", "RF", "LR"], corner => Assert.DoesNotContain(bay.Daemon.Pad(corner).Faults, f => f.Code == "SL-216"));
        bay.Simulator.Do("""{"do":"freeze-value","corner":"RR","on":false}""");
        Wait.Until(() => bay.Daemon.Pad("RR").Faults.Count == 0, Wait.Patience, () => $"back; {bay.Daemon.Pad("RR")}");
    }
}
