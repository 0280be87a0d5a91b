using System.Buffers;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Bench.Decoding;

/// <summary>The long form of the damage tests: how often damage passes for a frame, counted against the odds.</summary>
static class DamageCampaign
{
    const int SingleDamages = 30_000_000;
    const int HeavyDamages = 30_000_000;
    const int RandomBytes = 500_000_000;

    public static void Run()
    {
        var (wrong, lost) = Damage(SingleDamages, hits: _ => 1);
        Console.WriteLine($"one damaged byte, {SingleDamages} times: {wrong} wrong frames (none can be), {lost} times the next frame lost too");
        (wrong, lost) = Damage(HeavyDamages, hits: random => random.Next(2, 9));
        Console.WriteLine($"2 to 8 damaged bytes, {HeavyDamages} times: {wrong} wrong frames (at 2^-16 at most {HeavyDamages / 65536.0:F0}), {lost} times the next frame lost too");
        Console.WriteLine($"{RandomBytes} random bytes: {Noise()} frames (at 2^-24 a stretch, before length and kind, {RandomBytes / 256.0 / (1 << 24):F2})");
    }

    static (int Wrong, int Lost) Damage(int count, Func<Random, int> hits)
    {
        var random = new Random(2);
        var decoder = new PadFrameDecoder();
        var (first, second) = (new byte[PadFrameWriter.MaxFrameLength], new byte[PadFrameWriter.MaxFrameLength]);
        var stream = new byte[2 * PadFrameWriter.MaxFrameLength];
        Span<int> counts = stackalloc int[8];
        var (wrong, lost) = (0, 0);
        for (var index = 0; index < count; index++)
        {
            var firstLength = Sample(random, counts, first);
            var secondLength = Sample(random, counts, second);
            first.AsSpan(0, firstLength).CopyTo(stream);
            second.AsSpan(0, secondLength).CopyTo(stream.AsSpan(firstLength));
            // The delimiter is spared: without it the second frame is lost by necessity.
            for (var hit = hits(random); hit > 0; hit--)
                stream[random.Next(firstLength - 1)] ^= (byte)random.Next(1, 256);

            var start = decoder.Counters.Bytes;
            var input = new ReadOnlySequence<byte>(stream, 0, firstLength + secondLength);
            var secondSeen = false;
            while (decoder.TryRead(input, out var consumed, out _, out var frame))
            {
                input = input.Slice(consumed);
                if (frame.Offset - start >= firstLength)
                    secondSeen = true;
                else if (!stream.AsSpan(0, firstLength).SequenceEqual(first.AsSpan(0, firstLength)))
                    wrong++;
            }
            if (!secondSeen)
                lost++;
        }
        return (wrong, lost);
    }

    static int Sample(Random random, Span<int> counts, Span<byte> destination)
    {
        var cells = random.Next(1, 9);
        for (var cell = 0; cell < cells; cell++)
            counts[cell] = random.Next(-1 << 23, 1 << 23);
        var sample = new SampleFrame(
            (uint)random.Next(), (uint)random.Next(), PadStatus.None, 0.1, 0.2, random.Next(40), counts[..cells]);
        return PadFrameWriter.Write(sample, destination);
    }

    static long Noise()
    {
        const int Chunk = 1 << 20;
        var random = new Random(3);
        var decoder = new PadFrameDecoder();
        var buffer = new byte[Chunk];
        for (long total = 0; total < RandomBytes; total += Chunk)
        {
            random.NextBytes(buffer);
            // A rest at the end of a chunk is dropped: noise has no frame to lose.
            var input = new ReadOnlySequence<byte>(buffer);
            while (decoder.TryRead(input, out var consumed, out _, out _))
                input = input.Slice(consumed);
        }
        return decoder.Counters.Frames + decoder.Counters.UnknownKinds;
    }
}
