using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames;

public class WriterRefusalTests
{
    static readonly HelloFrame Hello = new()
    {
        BootId = 1,
        Cells = 1,
        SampleRateMillihertz = 1,
        CapacityGrams = 1,
        LowestCount = 0,
        HighestCount = 1,
        SerialNumber = "P",
    };

    [Theory]
    [InlineData(32.768)]
    [InlineData(-32.7676)]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void Tilt_outside_the_format(double degrees)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new SampleFrame(0, 0, 0, degrees, 0, 0, [1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SampleFrame(0, 0, 0, 0, degrees, 0, [1]));
    }

    [Fact]
    public void Temperature_outside_the_format() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SampleFrame(0, 0, 0, 0, 0, 327.68, [1]));

    [Fact]
    public void Cells_outside_the_format()
    {
        Assert.Throws<ArgumentException>(() => new SampleFrame(0, 0, 0, 0, 0, 0, []));
        Assert.Throws<ArgumentException>(() => new SampleFrame(0, 0, 0, 0, 0, 0, new int[9]));
        Assert.Throws<ArgumentException>(() => Frames.Bytes(to => PadFrameWriter.Write(default(SampleFrame), to)));
        var sample = new SampleFrame(0, 0, 0, 0, 0, 0, [1]);
        Assert.Throws<ArgumentOutOfRangeException>(() => sample[1]);
        Assert.Throws<ArgumentOutOfRangeException>(() => sample[-1]);
    }

    [Fact]
    public void Reserved_status_bits() =>
        Assert.Throws<ArgumentException>(() => new SampleFrame(0, 0, (PadStatus)0x4000, 0, 0, 0, [1]));

    [Fact]
    public void Hello_outside_the_format()
    {
        HelloFrame[] refused =
        [
            Hello with { Cells = 0 },
            Hello with { Cells = 9 },
            Hello with { SampleRateMillihertz = 0 },
            Hello with { CapacityGrams = 0 },
            Hello with { LowestCount = 1 },
            Hello with { Features = (PadFeatures)8 },
            Hello with { SerialNumber = "" },
            Hello with { SerialNumber = new string('x', 33) },
            Hello with { SerialNumber = "tab\t" },
            Hello with { Firmware = "é" },
            Hello with { Firmware = new string('x', 33) },
        ];
        Assert.All(refused, hello => Assert.Throws<ArgumentException>(() => Frames.Bytes(to => PadFrameWriter.Write(hello, to))));
        Assert.NotEmpty(Frames.Bytes(to => PadFrameWriter.Write(Hello, to)));
    }

    [Fact]
    public void Body_outside_the_format()
    {
        byte[][] refused = [[], [1], [0, 2], [1, 3], [.. Enumerable.Repeat((byte)254, 254)]];
        Assert.All(refused, body => Assert.Throws<ArgumentException>(() => Frames.Bytes(to => PadFrameWriter.WriteBody(body, to))));

        var longest = Enumerable.Repeat((byte)253, 253).ToArray();
        Assert.Equal(PadFrameWriter.MaxFrameLength, Frames.Bytes(to => PadFrameWriter.WriteBody(longest, to)).Length);
    }

    [Fact]
    public void Destination_that_is_one_byte_short()
    {
        var length = PadFrameWriter.WriteAskHello(new byte[7]);
        Assert.Equal(7, length);
        Assert.Throws<ArgumentException>(() => PadFrameWriter.WriteAskHello(new byte[6]));
    }
}
