using System.Buffers;
using System.Text;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Bench.Decoding;

/// <summary>The long form of the text line damage tests: how often wrong bits pass for a measured digit, with and without a checksum.</summary>
static class LineDamageCampaign
{
    const int Lines = 2_000_000;
    const string Numbers = @"load (?<load>\d+\.\d{3}) kg\*";

    public static void Run()
    {
        foreach (var rate in new[] { 1e-4, 1e-3, 1e-2 })
        {
            Console.WriteLine($"Text, bit errors {rate:G1}, {Lines} lines: "
                + $"without checksum {Describe(Damage(Pattern(LineChecksum.None), rate))}; with one {Describe(Damage(Pattern(LineChecksum.Xor), rate))}");
        }
    }

    static string Describe((int Wrong, int Refused) counts) => $"{counts.Wrong} wrong, {counts.Refused} refused";

    static LinePattern Pattern(LineChecksum checksum)
    {
        var check = checksum == LineChecksum.None ? "[0-9A-F]{2}" : "(?<check>[0-9A-F]{2})";
        return LinePattern.TryCreate(Numbers + check, FieldUnit.Kilogram, 1, checksum, out var pattern, out var problem)
            ? pattern
            : throw new InvalidOperationException(problem);
    }

    static (int Wrong, int Refused) Damage(LinePattern pattern, double rate)
    {
        var random = new Random(6);
        var decoder = new TextLineDecoder(pattern, LineEnd.ReturnOrFeed);
        decoder.TryRead(new ReadOnlySequence<byte>("\n"u8.ToArray()), out _, out _, out _);
        var rest = Array.Empty<byte>();
        var wrong = 0;
        for (var index = 0; index < Lines; index++)
        {
            var grams = random.Next(600_000);
            byte[] stream = [.. rest, .. Garble(Line(grams), rate, random)];
            var input = new ReadOnlySequence<byte>(stream);
            SequencePosition consumed;
            while (decoder.TryRead(input, out consumed, out _, out var reading))
            {
                input = input.Slice(consumed);
                wrong += reading.Sum == grams * 10L ? 0 : 1;
            }

            rest = input.Slice(consumed).ToArray();
        }

        return (wrong, (int)decoder.Counters.RefusedLines);
    }

    static byte[] Line(int grams)
    {
        var text = $"load {grams / 1000}.{grams % 1000:000} kg";
        return Encoding.ASCII.GetBytes($"{text}*{text.Aggregate(0, (sum, letter) => sum ^ letter):X2}\r\n");
    }

    // The gap to the next wrong bit is drawn, not every bit.
    static byte[] Garble(byte[] line, double rate, Random random)
    {
        for (var bit = Gap(rate, random); bit < 8L * line.Length; bit += 1 + Gap(rate, random))
            line[bit / 8] ^= (byte)(1 << (int)(bit % 8));
        return line;
    }

    static long Gap(double rate, Random random) => (long)Math.Min(int.MaxValue, Math.Log(1 - random.NextDouble()) / Math.Log(1 - rate));
}
