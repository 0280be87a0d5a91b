using System.Buffers;
using System.Text;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Protocol.Tests.TextLines;

/// <summary>Patterns and streams of text.</summary>
static class Lines
{
    public static LinePattern Pattern(string pattern = @"W (?<load>[-+]?\d+\.\d) kg", LineChecksum checksum = LineChecksum.None, FieldUnit unit = FieldUnit.Kilogram)
    {
        Assert.True(LinePattern.TryCreate(pattern, unit, 1, checksum, out var made, out var problem), problem);
        return made;
    }

    public static string Problem(string pattern, LineChecksum checksum = LineChecksum.None)
    {
        Assert.False(LinePattern.TryCreate(pattern, FieldUnit.Count, 1, checksum, out _, out var problem));
        return problem;
    }

    public static List<PadReading> Decode(TextLineDecoder decoder, ReadOnlyMemory<byte> bytes, params IReadOnlyList<int> reads)
    {
        var readings = new List<PadReading>();
        var kept = new List<ReadOnlyMemory<byte>>();
        for (var index = 0; !bytes.IsEmpty; index++)
        {
            var size = reads.Count == 0 ? bytes.Length : Math.Min(bytes.Length, reads[index % reads.Count]);
            kept.Add(bytes[..size]);
            bytes = bytes[size..];
            var input = PadFrames.Segment.Chain(kept);
            var rest = input.Slice(Drain(decoder, input, readings));
            kept.Clear();
            foreach (var piece in rest)
                kept.Add(piece);
        }

        return readings;
    }

    static SequencePosition Drain(TextLineDecoder decoder, ReadOnlySequence<byte> input, List<PadReading> readings)
    {
        SequencePosition consumed;
        while (decoder.TryRead(input, out consumed, out _, out var reading))
        {
            readings.Add(reading);
            input = input.Slice(consumed);
        }

        return consumed;
    }

    public static List<PadReading> Decode(TextLineDecoder decoder, string text, params IReadOnlyList<int> reads) =>
        Decode(decoder, Encoding.Latin1.GetBytes(text), reads);

    public static ReadOnlySequence<byte> Sequence(string text) => new(Encoding.Latin1.GetBytes(text));
}
