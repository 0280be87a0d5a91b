using System.Buffers;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Probing.Listening;

/// <summary>The counts of each cell out of pad frames.</summary>
internal sealed class PadFrameNumbers : ISpokenNumbers
{
    private readonly PadFrameDecoder _decoder = new();
    private readonly List<byte> _waiting = [];

    public IReadOnlyList<IReadOnlyList<double>> Take(byte[] bytes)
    {
        _waiting.AddRange(bytes);
        var (rest, samples) = (new ReadOnlySequence<byte>(_waiting.ToArray()), new List<IReadOnlyList<double>>());
        while (true)
        {
            var found = _decoder.TryRead(rest, out var consumed, out _, out var frame);
            if (found && frame.Kind == FrameKind.Sample && SampleFrame.TryParse(frame.Body, out var sample))
                samples.Add(Counts(sample));
            rest = rest.Slice(consumed);
            if (!found)
                break;
        }

        _waiting.RemoveRange(0, _waiting.Count - (int)rest.Length);
        return samples;
    }

    private static double[] Counts(in SampleFrame sample)
    {
        var counts = new double[sample.Cells];
        for (var cell = 0; cell < counts.Length; cell++)
            counts[cell] = sample[cell];
        return counts;
    }
}
