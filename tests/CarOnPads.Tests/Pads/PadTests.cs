using CarOnPads.Physics;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Tests.Pads;

/// <summary>A healthy pad's side of the frame protocol.</summary>
public class PadTests
{
    [Theory]
    [InlineData(10)]
    [InlineData(320)]
    [InlineData(1000)]
    public void The_mean_rate_is_exact_and_the_sequence_has_no_gap(double hertz)
    {
        using var bench = new Bench(hertz: hertz);
        var heard = bench.Listen(6);
        Assert.Equal(6 * hertz, heard.Samples.Count, 1.0);
        Assert.Equal(0, heard.Counters.BadFrames);
        for (var i = 0; i < heard.Samples.Count; i++)
        {
            Assert.Equal((uint)i, heard.Samples[i].Sequence);
            Assert.Equal((uint)Math.Round(i * 1e6 / hertz), heard.Samples[i].DeviceMicroseconds);
            Assert.Equal(i == 0 ? PadStatus.Restarted : PadStatus.None, heard.Samples[i].Status);
        }
    }

    [Fact]
    public void It_says_hello_at_the_start_and_every_five_seconds()
    {
        using var bench = new Bench();
        var hellos = bench.Listen(11, Wheel.RR).Hellos;
        Assert.Equal(3, hellos.Count);
        var hello = hellos[0];
        Assert.Equal("SLP-1004", hello.SerialNumber);
        Assert.Equal(80000u, hello.SampleRateMillihertz);
        Assert.Equal(600000u, hello.CapacityGrams);
        Assert.Equal(4, hello.Cells);
        Assert.Equal(PadFeatures.Tilt | PadFeatures.Temperature | PadFeatures.Settings, hello.Features);
        Assert.All(hellos, h => Assert.Equal(hello, h));
    }

    [Fact]
    public void Carried_to_another_place_it_goes_on_there_under_its_own_number()
    {
        using var bench = new Bench();
        bench.Run(1);
        bench.Do("""{"do":"move-pads","places":1}""");
        bench.PutMass(100, wheel: Wheel.LF);
        var heard = bench.Listen(8);
        Assert.All(heard.Hellos, h => Assert.Equal("SLP-1002", h.SerialNumber));
        Assert.Equal(100, Bench.Sum(heard.Samples[^1]) * bench.Bay.Pad(Wheel.LF).KgPerCount, 0.01);
        Assert.Equal(["SLP-1002", "SLP-1003", "SLP-1004", "SLP-1001"], Enum.GetValues<Wheel>().Select(w => bench.Bay.Pad(w).SerialNumber));
    }

    [Fact]
    public void It_says_hello_when_asked()
    {
        using var bench = new Bench();
        bench.Run(1);
        var frame = new byte[PadFrameWriter.MaxFrameLength];
        bench.Tap().Say(frame.AsSpan(0, PadFrameWriter.WriteAskHello(frame)));
        Assert.Single(bench.Listen(0.1).Hellos);
    }

    [Fact]
    public void It_takes_another_rate_and_says_so()
    {
        using var bench = new Bench();
        bench.Run(1);
        Ask(bench, new SettingFrame(7, PadSetting.SampleRate, 200000));
        var heard = bench.Listen(2);
        Assert.Equal(new AckFrame(7, AckResult.Done, 200000), Assert.Single(heard.Acks));
        Assert.InRange(heard.Samples.Count, 398, 402);
        Assert.Single(heard.Samples, s => s.Status == PadStatus.SettingChanged);
        var last = heard.Samples[^1].DeviceMicroseconds - heard.Samples[^2].DeviceMicroseconds;
        Assert.Equal(5000u, last);
    }

    [Theory]
    [InlineData(PadSetting.SampleRate, 9999, AckResult.OutOfRange, 80000)]
    [InlineData(PadSetting.SampleRate, 1000001, AckResult.OutOfRange, 80000)]
    [InlineData(PadSetting.Identify, 61, AckResult.OutOfRange, 0)]
    [InlineData(PadSetting.Identify, 5, AckResult.Done, 5)]
    [InlineData((PadSetting)99, 1, AckResult.UnknownSetting, 0)]
    internal void It_answers_every_wish_with_the_value_in_effect(PadSetting setting, int value, AckResult result, int inEffect)
    {
        using var bench = new Bench();
        Ask(bench, new SettingFrame(3, setting, value));
        Assert.Equal(new AckFrame(3, result, inEffect), Assert.Single(bench.Listen(0.1).Acks));
    }

    [Fact]
    public void It_finds_a_wish_between_garbage_and_in_pieces()
    {
        using var bench = new Bench();
        var frame = new byte[PadFrameWriter.MaxFrameLength];
        var length = PadFrameWriter.Write(new SettingFrame(1, PadSetting.Identify, 3), frame);
        bench.Tap().Say([0x55, 0xAA, 0x00]);
        bench.Tap().Say(frame.AsSpan(0, 4));
        bench.Run(0.02);
        bench.Tap().Say(frame.AsSpan(4, length - 4));
        Assert.Single(bench.Listen(0.1).Acks);
        Assert.Equal(3, bench.Bay.Pad(Wheel.LF).Blinking);
    }

    static void Ask(Bench bench, SettingFrame wish)
    {
        var frame = new byte[PadFrameWriter.MaxFrameLength];
        bench.Tap().Say(frame.AsSpan(0, PadFrameWriter.Write(wish, frame)));
    }
}
