using Shared.Rig;
using ScaleLink.Api.V1;

namespace Bay.Tests;

/// <summary>Pads of other makes end to end: the loads are the truth, the tilt may come from elsewhere. Limits: the project's own requirement.</summary>
[Trait("needs", "bay")]
public class AnyPadTests
{
    // Forty lines of some fifty characters.
    private const double BytesASecond = 40 * 50;

    [Theory]
    [InlineData("modbus")]
    [InlineData("text")]
    public void Settled_loads_are_the_truth_within_50_g_whatever_the_pads_speak(string speak)
    {
        using var bay = new BayRig(speak: speak, rate: 40);
        bay.PutCarOn();
        var loads = bay.Settled();
        var truth = bay.Simulator.TrueLoads();
        for (var i = 0; i < 4; i++)
            Assert.Equal(truth[i], loads.Corners[i].LoadKg.Estimate, 0.05);
        Assert.Equal(100 * (truth[1] + truth[2]) / truth.Sum(), loads.CrossWeightPercent.Estimate, 0.02);
    }

    [Fact]
    public void Without_device_time_cross_weight_waits_until_the_car_is_settled()
    {
        using var bay = new BayRig(speak: "RR=modbus");
        bay.PutCarOn();
        bay.Settled();
        using var watch = new LoadsWatch(bay.Daemon);
        bay.Simulator.DoAndWait("""{"do":"bounce","newtons":350,"seconds":2}""");
        bay.Settled();
        var moving = watch.Received.Select(r => r.Loads).Where(l => l.Verdict == Verdict.Moving && l.TotalKg is not null).ToList();
        Assert.NotEmpty(moving);
        Assert.All(moving, l => Assert.Null(l.CrossWeightPercent));
    }

    [Fact]
    public void Tilt_from_inclinometers_on_a_bus_corrects_loads_from_pads_of_their_own()
    {
        using var bay = new BayRig(tilt: "bus");
        bay.PutCarOn();
        bay.Settled();
        bay.Simulator.Do("""{"do":"pad-tilt","corner":"LF","pitch_deg":2.5,"roll_deg":-1.5}""");
        Wait.Until(() => bay.Daemon.Pad("LF") is { HasPitchDeg: true } pad && Math.Abs(pad.PitchDeg - 2.5) < 0.01, Wait.Patience, () => $"the tilt followed; {bay.Daemon.Pad("LF")}");
        // The tilt takes 0.35 kg off the cells' reading; the truth has not changed.
        var truth = bay.Simulator.TrueLoads()[0];
        Wait.Until(() => bay.Daemon.Loads() is { WeighingReady: true } l && Math.Abs(l.Corners[0].LoadKg.Estimate - truth) < 0.05, Wait.Patience, () => $"corrected to {truth}; {bay.Daemon.Loads()}");

        // The bus goes, the loads stay; they are marked.
        bay.Simulator.Do("""{"do":"self-test","corner":"LF","fault":"tilt"}""");
        Wait.Until(() => bay.Daemon.Pad("LF").Faults.Any(f => f.Code == "SL-208"), Wait.Patience, "the tilt is missed");
        Assert.False(bay.Daemon.Pad("LF").HasPitchDeg);
        Assert.Equal(PadState.Live, bay.Daemon.Pad("LF").State);
        Assert.Empty(bay.Daemon.Pad("RR").Faults);
        bay.Simulator.Do("""{"do":"self-test","corner":"LF","fault":"tilt","on":false}""");
        Wait.Until(() => bay.Daemon.Pad("LF").Faults.Count == 0, Wait.Patience, "the tilt is back");
    }

    // Common practice, no published source: a pad whose lines carry no checksum, and whose cable runs beside the charger's.
    [Fact]
    public void Garbled_text_without_a_checksum_publishes_nothing_far_off()
    {
        using var bay = new BayRig(speak: "LF=text", isTextChecked: false, rate: 40);
        bay.PutCarOn();
        bay.Settled();
        var truth = bay.Simulator.TrueLoads()[0];
        using var samples = new SamplesWatch(bay.Daemon);
        Wait.Until(() => samples.Of(Corner.Lf).Count > 10, Wait.Patience, "samples run");
        foreach (var bitErrorRate in new[] { 0.0001, 0.001, 0.01 })
        {
            bay.Simulator.Do(FormattableString.Invariant($$"""{"do":"garble","corner":"LF","bit_error_rate":{{bitErrorRate}}}"""));
            Hear(bay, seconds: 3);
        }

        bay.Simulator.Do("""{"do":"garble","corner":"LF","bit_error_rate":0}""");
        // What the guard lets through: a thousandth of the capacity.
        Assert.All(samples.Of(Corner.Lf), s => Assert.Equal(truth, s.LoadKg!.Value, 0.6));
        Wait.Until(() => bay.Daemon.Pad("LF") is { State: PadState.Live, Faults.Count: 0 }, Wait.Patience, "LF back");
    }

    private static void Hear(BayRig bay, double seconds)
    {
        var from = bay.Daemon.Pad("LF").Counters.Bytes;
        Wait.Until(() => bay.Daemon.Pad("LF").Counters.Bytes > from + seconds * BytesASecond, Wait.Patience, "lines come");
    }
}
