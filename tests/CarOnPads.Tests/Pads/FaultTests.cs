using CarOnPads.Physics;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Tests.Pads;

/// <summary>Each fault does to the stream what a host must be able to tell apart.</summary>
public class FaultTests
{
    [Fact]
    public void A_frozen_pad_says_nothing_and_goes_on_without_a_gap_in_its_sequence()
    {
        using var bench = new Bench();
        var last = bench.Listen(1).Samples[^1];
        bench.Do("""{"do":"freeze","corner":"LF"}""");
        Assert.Empty(bench.Listen(1).Samples);
        bench.Do("""{"do":"freeze","corner":"LF","on":false}""");
        var next = bench.Listen(0.1).Samples[0];
        Assert.Equal(last.Sequence + 1, next.Sequence);
        Assert.InRange(next.DeviceMicroseconds - last.DeviceMicroseconds, 990000u, 1030000u);
    }

    [Fact]
    public void A_frozen_value_stays_while_samples_go_on()
    {
        using var bench = new Bench("noise");
        bench.Run(0.5);
        bench.Do("""{"do":"freeze-value","corner":"LF"}""");
        var samples = bench.Listen(1).Samples;
        Assert.InRange(samples.Count, 79, 81);
        Assert.Single(samples.Select(Bench.Sum).Distinct());
        bench.Do("""{"do":"freeze-value","corner":"LF","on":false}""");
        Assert.True(bench.Listen(1).Samples.Select(Bench.Sum).Distinct().Count() > 50);
    }

    [Fact]
    public void Silence_loses_bytes_but_not_time()
    {
        using var bench = new Bench();
        var last = bench.Listen(1).Samples[^1];
        bench.Do("""{"do":"silence","corner":"LF","seconds":1}""");
        var heard = bench.Listen(2);
        Assert.InRange(heard.Samples[0].Sequence - last.Sequence, 80u, 82u);
        Assert.InRange(heard.Samples.Count, 79, 81);
    }

    [Fact]
    public void A_brown_out_gives_another_boot_id_and_starts_from_zero()
    {
        using var bench = new Bench("clock-offset");
        var before = bench.Listen(1).Hellos[0].BootId;
        bench.Do("""{"do":"brown-out","corner":"LF"}""");
        var heard = bench.Listen(2);
        Assert.Equal(0u, heard.Samples[0].Sequence);
        Assert.Equal(0u, heard.Samples[0].DeviceMicroseconds);
        Assert.Equal(PadStatus.Restarted, heard.Samples[0].Status);
        Assert.InRange(heard.Samples.Count, 94, 98);
        Assert.NotEqual(before, Assert.Single(heard.Hellos).BootId);
    }

    [Fact]
    public void Garbling_spoils_frames_at_the_stated_rate_and_no_spoilt_one_is_taken_for_good()
    {
        using var clean = new Bench(hertz: 1000);
        using var dirty = new Bench(hertz: 1000);
        dirty.Do("""{"do":"garble","corner":"LF","bit_error_rate":0.001}""");
        var good = clean.Listen(5).Samples.ToDictionary(s => s.Sequence);
        var heard = dirty.Listen(5);

        // A frame of some 40 bytes survives with probability (1 - 0.001)^320, 73 %; its delimiter is the neighbour's too.
        Assert.InRange(heard.Samples.Count, 3200, 3900);
        Assert.True(heard.Counters.BadFrames > 500);
        Assert.All(heard.Samples, s => Assert.Equal(Bench.Sum(good[s.Sequence]), Bench.Sum(s)));
    }

    [Fact]
    public void Dropped_samples_leave_gaps_and_duplicates_repeat()
    {
        using var bench = new Bench(hertz: 500);
        bench.Do("""{"do":"drop","corner":"LF","share":0.1}""");
        var dropped = bench.Listen(4).Samples;
        Assert.InRange(dropped.Count, 1740, 1860);
        Assert.Equal(dropped.Count, dropped.Select(s => s.Sequence).Distinct().Count());
        bench.Do("""{"do":"drop","corner":"LF","share":0}""");
        bench.Do("""{"do":"duplicate","corner":"LF","share":0.1}""");
        var doubled = bench.Listen(4).Samples;
        Assert.InRange(doubled.Count, 2140, 2260);
        Assert.InRange(doubled.Select(s => s.Sequence).Distinct().Count(), 1999, 2001);
    }

    [Fact]
    public void A_pulled_cable_loses_bytes_while_the_pad_goes_on()
    {
        using var bench = new Bench();
        var last = bench.Listen(1).Samples[^1];
        bench.Do("""{"do":"unplug","corner":"LF"}""");
        Assert.Empty(bench.Listen(1).Samples);
        Assert.True(bench.Tap().LostBytes > 2000);
        bench.Do("""{"do":"replug","corner":"LF"}""");
        Assert.InRange(bench.Listen(0.1).Samples[0].Sequence - last.Sequence, 80u, 82u);
        Assert.Empty(bench.Bay.Pad(Wheel.LF).Faults.Present(bench.Bay.Time));
    }

    [Theory]
    [InlineData("excitation", PadStatus.ExcitationLow)]
    [InlineData("converter", PadStatus.ConverterFault)]
    [InlineData("tilt", PadStatus.TiltFault)]
    [InlineData("temperature", PadStatus.TemperatureFault)]
    internal void A_self_test_fault_is_reported_and_its_sensor_absent(string fault, PadStatus status)
    {
        using var bench = new Bench();
        bench.Run(0.1);
        bench.Do($$"""{"do":"self-test","corner":"LF","fault":"{{fault}}"}""");
        var sample = bench.Listen(0.1).Samples[^1];
        Assert.Equal(status, sample.Status);
        Assert.Equal(fault == "tilt", sample.PitchDegrees is null && sample.RollDegrees is null);
        Assert.Equal(fault == "temperature", sample.TemperatureCelsius is null);
        bench.Do($$"""{"do":"self-test","corner":"LF","fault":"{{fault}}","on":false}""");
        Assert.Equal(PadStatus.None, bench.Listen(0.1).Samples[^1].Status);
    }
}
