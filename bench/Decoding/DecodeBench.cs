using System.Buffers;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Bench.Decoding;

/// <summary>What one pad frame costs to decode: samples of four cells, in pieces as a serial port gives them.</summary>
static class DecodeBench
{
    const int Frames = 20_000;
    const int Rounds = 60;
    const int WarmUpRounds = 20;

    public static void Run()
    {
        var stream = Samples();
        Console.WriteLine($"{Frames} samples of 4 cells, {(double)stream.Length / Frames:F1} bytes each, {Rounds} rounds, fastest and median");
        foreach (var read in new[] { 64, 512, 4096 })
            Measure(stream, read);
    }

    static void Measure(byte[] stream, int read)
    {
        var clock = TimeProvider.System;
        var decoder = new PadFrameDecoder();
        for (var round = 0; round < WarmUpRounds; round++)
            Decode(decoder, stream, read);

        var nanoseconds = new double[Rounds];
        var allocated = GC.GetAllocatedBytesForCurrentThread();
        for (var round = 0; round < Rounds; round++)
        {
            var start = clock.GetTimestamp();
            var frames = Decode(decoder, stream, read);
            nanoseconds[round] = clock.GetElapsedTime(start).TotalNanoseconds / frames;
        }
        allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
        Array.Sort(nanoseconds);
        var median = nanoseconds[Rounds / 2];
        Console.WriteLine($"reads of {read,4} bytes: {nanoseconds[0],6:F0} {median,6:F0} ns a frame, {1e9 / median,10:F0} frames/s, {allocated} bytes allocated");
    }

    /// <summary>Windows over one array, each beginning at what the last one left, as long as a read and that rest.</summary>
    static int Decode(PadFrameDecoder decoder, byte[] stream, int read)
    {
        var (frames, consumedUpTo, sum) = (0, 0, 0L);
        for (var arrived = Math.Min(read, stream.Length); ; arrived = Math.Min(arrived + read, stream.Length))
        {
            var input = new ReadOnlySequence<byte>(stream, consumedUpTo, arrived - consumedUpTo);
            while (decoder.TryRead(input, out var consumed, out _, out var frame))
            {
                input = input.Slice(consumed);
                if (SampleFrame.TryParse(frame.Body, out var sample))
                    sum += sample[0];
                frames++;
            }
            consumedUpTo = arrived - (int)input.Length;
            if (arrived == stream.Length)
                break;
        }
        return sum == 0 || frames != Frames
            ? throw new InvalidOperationException($"{frames} of {Frames} frames came back.")
            : frames;
    }

    static byte[] Samples()
    {
        var random = new Random(1);
        var stream = new ArrayBufferWriter<byte>();
        for (uint sequence = 0; sequence < Frames; sequence++)
        {
            var sample = new SampleFrame(
                sequence, sequence * 12_500, PadStatus.None, 0.12, -0.34, 21.5,
                [random.Next(1 << 20), random.Next(1 << 20), random.Next(1 << 20), random.Next(1 << 20)]);
            stream.Advance(PadFrameWriter.Write(sample, stream.GetSpan(PadFrameWriter.MaxFrameLength)));
        }
        return stream.WrittenSpan.ToArray();
    }
}
