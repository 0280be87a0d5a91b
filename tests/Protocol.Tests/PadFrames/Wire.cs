using System.Buffers;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames;

/// <summary>A frame taken out of the decoder, to keep and compare.</summary>
sealed record Delivered(FrameKind Kind, string Body, long Offset);

/// <summary>Feeds a decoder the way a pipe reader does, in reads and segments of any size.</summary>
static class Wire
{
    public static List<Delivered> Decode(PadFrameDecoder decoder, ReadOnlyMemory<byte> bytes)
    {
        var delivered = new List<Delivered>();
        Drain(decoder, new ReadOnlySequence<byte>(bytes), delivered);
        return delivered;
    }

    /// <summary>Reads of the given sizes over and over; what a read leaves stays as a segment of its own before the next.</summary>
    public static List<Delivered> Decode(PadFrameDecoder decoder, ReadOnlyMemory<byte> bytes, IReadOnlyList<int> reads)
    {
        var delivered = new List<Delivered>();
        var kept = new List<ReadOnlyMemory<byte>>();
        for (var index = 0; !bytes.IsEmpty; index++)
        {
            var size = Math.Min(bytes.Length, reads[index % reads.Count]);
            kept.Add(bytes[..size]);
            bytes = bytes[size..];

            var input = Segment.Chain(kept);
            var rest = input.Slice(Drain(decoder, input, delivered));
            kept.Clear();
            foreach (var piece in rest)
                kept.Add(piece);
        }
        return delivered;
    }

    static SequencePosition Drain(PadFrameDecoder decoder, ReadOnlySequence<byte> input, List<Delivered> delivered)
    {
        while (true)
        {
            var found = decoder.TryRead(input, out var consumed, out var examined, out var frame);
            if (!found)
            {
                Assert.Equal(input.End, examined);
                return consumed;
            }
            Assert.Equal(consumed, examined);
            delivered.Add(new Delivered(frame.Kind, Convert.ToHexString(frame.Body), frame.Offset));
            input = input.Slice(consumed);
        }
    }
}
