using ScaleLink.Protocol.Framing;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames;

/// <summary>Each way of being wrong has its own reason, and a good check does not excuse a wrong body.</summary>
public class RefusalTests
{
    static readonly HelloFrame Hello = new()
    {
        BootId = 1,
        Cells = 4,
        SampleRateMillihertz = 80_000,
        CapacityGrams = 600_000,
        LowestCount = -8_388_608,
        HighestCount = 8_388_607,
        SerialNumber = "P-1",
    };

    static readonly byte[] HelloBody = Frames.BodyOf(Frames.Bytes(to => PadFrameWriter.Write(Hello, to)));
    static readonly byte[] SampleBody =
        Frames.BodyOf(Frames.Bytes(to => PadFrameWriter.Write(new SampleFrame(1, 2, 0, 0, 0, 20, [5, 6]), to)));

    [Fact]
    public void Too_short() => Assert.Equal(SkipReason.TooShort, ReasonFor([2, 0x41, 0x42, 0x43, 0x44, 0]));

    [Fact]
    public void Good_check_over_impossible_stuffing() => Assert.Equal(SkipReason.BadStuffing, ReasonFor(Sealed([9, 1, 1])));

    [Fact]
    public void Length_byte_that_does_not_fit() => Assert.Equal(SkipReason.WrongLength, ReasonFor(SealedBody([0x10, 3])));

    [Fact]
    public void Kind_zero() => Assert.Equal(SkipReason.Malformed, ReasonFor(SealedBody([0, 2])));

    [Theory]
    [InlineData(18, 0)]
    [InlineData(18, 3)]
    [InlineData(18, 9)]
    public void Sample_with_impossible_cells(int position, byte value) =>
        Assert.Equal(SkipReason.Malformed, ReasonFor(SealedBody(Changed(SampleBody, position, value))));

    [Theory]
    [InlineData(7, 0)] // no cells
    [InlineData(7, 9)] // too many cells
    [InlineData(25, 0)] // no serial number
    [InlineData(25, 33)] // a serial number beyond its limit
    [InlineData(25, 2)] // texts shorter than the body
    [InlineData(27, 0x1F)] // not printable
    [InlineData(27, 0x7F)]
    [InlineData(29, 1)] // texts longer than the body
    [InlineData(19, 0x7F)] // lowest count above the highest
    public void Hello_outside_its_ranges(int position, byte value)
    {
        var body = Changed(HelloBody, position, value);

        Assert.False(HelloFrame.TryParse(body, out _));
        Assert.Equal(SkipReason.Malformed, ReasonFor(SealedBody(body)));
    }

    [Fact]
    public void Hello_of_another_version_is_delivered_with_its_name()
    {
        byte[] later = [.. HelloBody, 0xAA, 0xBB];
        later[1] = (byte)later.Length;
        later[2] = 2;
        later[7] = 99;
        var delivered = Assert.Single(Wire.Decode(new PadFrameDecoder(), SealedBody(later)));

        Assert.True(HelloFrame.TryParse(Hex.Bytes(delivered.Body), out var hello));
        Assert.Equal(("P-1", 2, false), (hello.SerialNumber, hello.Version, hello.IsSupported));
    }

    [Fact]
    public void Unknown_kind_is_counted_and_is_no_fault()
    {
        var decoder = new PadFrameDecoder();
        var unknown = Frames.Bytes(to => PadFrameWriter.WriteBody([0x77, 4, 0, 0], to));

        Assert.Empty(Wire.Decode(decoder, unknown));
        Assert.Equal(new DecoderCounters(unknown.Length, 0, 0, 0, 1), decoder.Counters);
        Assert.Empty(decoder.RecentSkips());
    }

    [Fact]
    public void Reserved_bits_are_ignored()
    {
        var sample = Changed(SampleBody, 11, 0xD0);
        Assert.True(SampleFrame.TryParse(sample, out var parsed));
        Assert.Equal(PadStatus.Restarted, parsed.Status);

        Assert.True(HelloFrame.TryParse(Changed(HelloBody, 24, 0xF9), out var hello));
        Assert.Equal(PadFeatures.Tilt, hello.Features);
    }

    [Fact]
    public void Only_the_newest_sixteen_skips_are_kept()
    {
        var decoder = new PadFrameDecoder();
        Wire.Decode(decoder, (byte[])[0, .. Enumerable.Repeat(new byte[] { 1, 0 }, 20).SelectMany(bad => bad)]);

        Assert.Equal(20, decoder.Counters.BadFrames);
        Assert.Equal(Enumerable.Range(4, 16).Select(index => new Skip(1 + 2 * index, 2, SkipReason.TooShort)), decoder.RecentSkips());
    }

    static SkipReason ReasonFor(byte[] frame)
    {
        var decoder = new PadFrameDecoder();
        Assert.Empty(Wire.Decode(decoder, (byte[])[0, .. frame]));
        Assert.Equal(1, decoder.Counters.BadFrames);
        return Assert.Single(decoder.RecentSkips()).Reason;
    }

    static byte[] Changed(byte[] body, int position, byte value)
    {
        var changed = (byte[])body.Clone();
        changed[position] = value;
        return changed;
    }

    static byte[] SealedBody(byte[] body)
    {
        var encoded = new byte[Cobs.MaxEncodedLength(body.Length)];
        return Sealed(encoded[..Cobs.Encode(body, encoded)]);
    }

    static byte[] Sealed(byte[] encoded)
    {
        var crc = Crc16.Ibm3740(encoded);
        return [.. encoded, (byte)(0x40 | crc >> 12), (byte)(0x40 | crc >> 6 & 0x3F), (byte)(0x40 | crc & 0x3F), 0];
    }
}
