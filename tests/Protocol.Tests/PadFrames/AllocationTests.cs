using System.Buffers;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames;

public class AllocationTests
{
    [Fact]
    public void Decoding_samples_allocates_nothing()
    {
        const int Count = 10_000;
        var bytes = new byte[Count * PadFrameWriter.MaxFrameLength];
        var length = 0;
        for (uint sequence = 0; sequence < Count; sequence++)
        {
            length += PadFrameWriter.Write(new SampleFrame(sequence, sequence * 12_500, 0, 0.1, -0.2, 21, [1, -2, 3, 0]), bytes.AsSpan(length));
            if (sequence % 100 == 99)
                bytes[length - 5] ^= 0x02;
        }
        // Pieces of 100 bytes, so that most frames lie across two of them.
        var scattered = Segment.Chain([.. bytes[..length].Chunk(100).Select(piece => (ReadOnlyMemory<byte>)piece)]);
        var decoder = new PadFrameDecoder();
        Sum(decoder, scattered);

        var before = GC.GetAllocatedBytesForCurrentThread();
        var sum = Sum(decoder, scattered);
        var after = GC.GetAllocatedBytesForCurrentThread();

        Assert.Equal(0, after - before);
        Assert.Equal(2L * (Count - Count / 100), sum);
        Assert.Equal(2 * Count / 100, decoder.Counters.BadFrames);
    }

    static long Sum(PadFrameDecoder decoder, ReadOnlySequence<byte> input)
    {
        long sum = 0;
        while (decoder.TryRead(input, out var consumed, out _, out var frame))
        {
            input = input.Slice(consumed);
            if (SampleFrame.TryParse(frame.Body, out var sample))
                for (var cell = 0; cell < sample.Cells; cell++)
                    sum += sample[cell];
        }
        return sum;
    }
}
