using Shared;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames;

public class RoundTripTests
{
    [Fact]
    public void A_sample_comes_back() => Seeded.Check(Frames.Samples, 3000, sent =>
    {
        Assert.True(SampleFrame.TryParse(Frames.BodyOf(Frames.Bytes(to => PadFrameWriter.Write(sent, to))), out var got));
        Assert.Equal(sent.Sequence, got.Sequence);
        Assert.Equal(sent.DeviceMicroseconds, got.DeviceMicroseconds);
        Assert.Equal(sent.Status, got.Status);
        Assert.Equal(sent.PitchDegrees, got.PitchDegrees);
        Assert.Equal(sent.RollDegrees, got.RollDegrees);
        Assert.Equal(sent.TemperatureCelsius, got.TemperatureCelsius);
        Assert.Equal(Frames.Counts(sent), Frames.Counts(got));
    });

    [Fact]
    public void A_hello_comes_back() => Seeded.Check(Frames.Hellos, 2000, sent =>
    {
        Assert.True(HelloFrame.TryParse(Frames.BodyOf(Frames.Bytes(to => PadFrameWriter.Write(sent, to))), out var got));
        Assert.Equal(sent, got);
    });

    [Fact]
    public void A_wish_and_its_answer_come_back()
    {
        Seeded.Check(Frames.Settings, 500, sent =>
        {
            Assert.True(SettingFrame.TryParse(Frames.BodyOf(Frames.Bytes(to => PadFrameWriter.Write(sent, to))), out var got));
            Assert.Equal(sent, got);
        });
        Seeded.Check(Frames.Acks, 500, sent =>
        {
            Assert.True(AckFrame.TryParse(Frames.BodyOf(Frames.Bytes(to => PadFrameWriter.Write(sent, to))), out var got));
            Assert.Equal(sent, got);
        });
    }

    [Fact]
    public void A_request_for_a_hello_comes_back() =>
        Assert.Equal([(byte)FrameKind.AskHello, 2], Frames.BodyOf(Frames.Bytes(PadFrameWriter.WriteAskHello)));

    [Fact]
    public void No_frame_holds_a_zero_but_its_last_byte() => Seeded.Check(Frames.Any, 2000, frame =>
    {
        Assert.Equal(frame.Length - 1, frame.IndexOf((byte)0));
        Assert.InRange(frame.Length, 7, PadFrameWriter.MaxFrameLength);
    });
}
