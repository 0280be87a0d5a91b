using Shared;
using System.Buffers.Binary;
using CsCheck;
using ScaleLink.Protocol.Framing;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames;

public class DamageTests
{
    const int LengthPosition = 2;

    static readonly Gen<(byte[] Before, byte[] Middle, byte[] After)> Threes = Gen.Select(Frames.Any, Frames.Any, Frames.Any);

    // Every position of the middle frame and its delimiter, every other value.
    [Fact]
    public void One_damaged_byte_never_makes_a_frame_that_was_not_sent() => Seeded.Check(Threes, 60, frames =>
    {
        byte[] stream = [0, .. frames.Before, .. frames.Middle, .. frames.After];
        var sent = Wire.Decode(new PadFrameDecoder(), stream);
        var start = 1 + frames.Before.Length;
        for (var position = 0; position < frames.Middle.Length; position++)
            for (var change = 1; change < 256; change++)
            {
                var damaged = (byte[])stream.Clone();
                damaged[start + position] ^= (byte)change;
                var decoder = new PadFrameDecoder();
                var delivered = Wire.Decode(decoder, damaged);

                // A damaged delimiter always costs the frame behind it; a damaged length can.
                var mayCostTheNext = position == LengthPosition || position == frames.Middle.Length - 1;
                if (delivered.Count != 2 || delivered[0] != sent[0] || delivered[1] != sent[2])
                    Assert.True(mayCostTheNext && delivered.SequenceEqual(sent[..1]), $"Position {position}, change {change}.");
                Assert.True(decoder.Counters.BadFrames > 0);
            }
    });

    // A sample made so that the CRC stands at its starting value behind byte 41 of the frame, and that the bytes from there
    // on are an acknowledgement of their own: the one way in which a damaged byte could make a false frame.
    [Fact]
    public void A_damaged_byte_that_becomes_a_delimiter_does_not_reveal_a_frame_inside_the_frame()
    {
        var inner = Frames.Bytes(to => PadFrameWriter.Write(new AckFrame(7, AckResult.Done, 1), to))[..9];
        var counts = new byte[32];
        counts.AsSpan().Fill(0x11);
        inner.CopyTo(counts, counts.Length - inner.Length);
        var cells = new int[8];
        for (var cell = 0; cell < cells.Length; cell++)
            cells[cell] = BinaryPrimitives.ReadInt32LittleEndian(counts.AsSpan(4 * cell));
        var frame = Enumerable.Range(0, 65536).Where(low => (low & 0xFF) != 0 && low > 0xFF)
            .Select(low => Frames.Bytes(to => PadFrameWriter.Write(
                new SampleFrame(0x11110000u | (uint)low, 0x11111111, (PadStatus)0x1111, 1.5, 1.5, 25.7, cells), to)))
            .First(bytes => Crc16.Ibm3740(bytes.AsSpan(..(bytes.Length - 13))) == 0xFFFF);
        var hidden = Assert.Single(Wire.Decode(new PadFrameDecoder(), frame.AsMemory(frame.Length - 13)));
        Assert.Equal(FrameKind.Acknowledgement, hidden.Kind);

        frame[^14] = 0;
        var decoder = new PadFrameDecoder();

        Assert.Empty(Wire.Decode(decoder, (byte[])[0, .. frame]));
        Assert.Equal([SkipReason.BadCheck, SkipReason.TailOfDamaged], decoder.RecentSkips().Select(skip => skip.Reason));
    }

    // The decoder knows the length of what is missing only when it has seen the length byte. Before it, no frame of a known
    // kind has a CRC that could begin afresh: every first byte, kind and length was tried.
    [Fact]
    public void No_frame_begins_with_bytes_that_leave_the_crc_at_its_start()
    {
        (FrameKind Kind, int[] Lengths)[] kinds =
        [
            (FrameKind.Hello, [.. Enumerable.Range(28, 91 - 28 + 1)]),
            (FrameKind.Sample, [23, 27, 31, 35, 39, 43, 47, 51]),
            (FrameKind.AskHello, [2]),
            (FrameKind.Set, [8]),
            (FrameKind.Acknowledgement, [8]),
        ];
        for (byte code = 1; code < 255; code++)
        {
            Assert.NotEqual(0xFFFF, Crc16.Ibm3740([code]));
            foreach (var (kind, lengths) in kinds)
            {
                Assert.NotEqual(0xFFFF, Crc16.Ibm3740([code, (byte)kind]));
                Assert.All(lengths, length => Assert.NotEqual(0xFFFF, Crc16.Ibm3740([code, (byte)kind, (byte)length])));
            }
        }
    }
}
