using Shared;
using CsCheck;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames;

public class ResynchronisationTests
{
    static readonly Gen<byte[]> Garbage = Gen.OneOf(
        Gen.Byte.Array[0, 40],
        Gen.Byte[1, 255].Array[200, 700],
        Gen.Const((byte)0).Array[0, 5]);

    [Fact]
    public void Any_split_into_reads_gives_the_same_frames_and_counters() =>
        Seeded.Check(Gen.Select(Gen.OneOf(Frames.Any, Garbage).Array[1, 12], Gen.Int[1, 90].Array[1, 6]), 1500, streams =>
        {
            var (pieces, reads) = streams;
            byte[] stream = [.. pieces.SelectMany(piece => piece)];
            var whole = new PadFrameDecoder();
            var split = new PadFrameDecoder();

            Assert.Equal(Wire.Decode(whole, stream), Wire.Decode(split, stream, reads));
            Assert.Equal(whole.Counters, split.Counters);
            Assert.Equal(whole.RecentSkips(), split.RecentSkips());
        });

    [Fact]
    public void Garbage_costs_at_most_the_frame_behind_it() =>
        Seeded.Check(Gen.Select(Frames.Any, Garbage).Array[2, 8], 1500, pairs =>
        {
            var stream = new List<byte>();
            var starts = new Dictionary<long, bool>();
            var isAfterGarbage = false;
            foreach (var (frame, garbage) in pairs)
            {
                starts.Add(stream.Count, isAfterGarbage);
                stream.AddRange(frame);
                stream.AddRange(garbage);
                isAfterGarbage = garbage.Length > 0;
            }
            var delivered = Wire.Decode(new PadFrameDecoder(), stream.ToArray());

            Assert.All(delivered, frame => Assert.Contains(frame.Offset, starts));
            Assert.Subset(
                delivered.Select(frame => frame.Offset).ToHashSet(),
                starts.Where(start => !start.Value).Select(start => start.Key).ToHashSet());
        });

    [Fact]
    public void Delimiters_alone_are_silent()
    {
        var decoder = new PadFrameDecoder();

        Assert.Empty(Wire.Decode(decoder, new byte[1000]));
        Assert.Equal(new DecoderCounters(1000, 0, 0, 0, 0), decoder.Counters);
    }

    [Fact]
    public void Joining_in_the_middle_of_a_frame_is_no_bad_frame()
    {
        var frame = Frames.Bytes(to => PadFrameWriter.Write(new SampleFrame(1, 2, 0, null, null, null, [3, 4]), to));
        var decoder = new PadFrameDecoder();

        var delivered = Wire.Decode(decoder, (byte[])[.. frame[5..], .. frame]);

        Assert.Equal(frame.Length - 5, Assert.Single(delivered).Offset);
        Assert.Equal(new DecoderCounters(2 * frame.Length - 5, 1, 0, frame.Length - 5, 0), decoder.Counters);
        Assert.Equal([new Skip(0, frame.Length - 5, SkipReason.BeforeFirstDelimiter)], decoder.RecentSkips());
    }

    [Fact]
    public void A_stretch_without_delimiter_is_dropped_as_it_comes()
    {
        var decoder = new PadFrameDecoder();
        var noise = Enumerable.Repeat((byte)0x55, 100_000).ToArray();

        Assert.Empty(Wire.Decode(decoder, noise, [4096]));
        Assert.Equal(new DecoderCounters(100_000, 0, 1, 100_000, 0), decoder.Counters);
        Assert.Equal([new Skip(0, 100_000, SkipReason.TooLong)], decoder.RecentSkips());

        // What ends the noise is a delimiter, so what follows is not the tail of something unseen.
        Wire.Decode(decoder, new byte[] { 0, 1, 0 });
        Assert.Equal([SkipReason.TooLong, SkipReason.TooShort], decoder.RecentSkips().Select(skip => skip.Reason));

        var ask = Frames.Bytes(PadFrameWriter.WriteAskHello);
        Assert.Equal(100_003, Assert.Single(Wire.Decode(decoder, ask)).Offset);
    }
}
