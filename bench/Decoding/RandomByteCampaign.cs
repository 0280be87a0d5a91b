using System.Buffers;
using System.Globalization;
using ScaleLink.Protocol.Modbus;
using ScaleLink.Protocol.PadFrames;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Bench.Decoding;

/// <summary>So many random bytes into each decoder: how many messages it takes out of them, against the odds.</summary>
static class RandomByteCampaign
{
    const long Bytes = 100_000_000;
    const int Chunk = 1 << 20;
    const int LineLength = 12;
    const string Pattern = @"(?<load>[-+]?\d+\.\d{3}) kg";

    public static void Run(string decoder)
    {
        if (decoder is "all" or "pad-frames")
            PadFrames();
        if (decoder is "all" or "modbus")
            Modbus();
        if (decoder is "all" or "text")
            Text();
    }

    // A stretch between two zeros has to carry a good 16-bit check, a kind and a length that fits it.
    static void PadFrames()
    {
        var decoder = new PadFrameDecoder();
        Feed(new Random(11), (in ReadOnlySequence<byte> input, out SequencePosition consumed) => decoder.TryRead(input, out consumed, out _, out _));
        Say("pad frames", decoder.Counters.Frames + decoder.Counters.UnknownKinds, "one zero in 256 bytes ends a stretch; check 2^-16, length 2^-8", Bytes / 256.0 * Math.Pow(2, -24));
    }

    // Address, function, number of bytes and a 16-bit check have to be right; a refusal has only address and function besides the check.
    static void Modbus()
    {
        var decoder = new ModbusReplyDecoder();
        decoder.Expect(new ModbusRequest(5, ModbusFunction.ReadInputRegisters, 0, 12));
        var (registers, refusals, strays) = (0L, 0L, 0L);
        Feed(new Random(12), (in ReadOnlySequence<byte> input, out SequencePosition consumed) =>
        {
            if (!decoder.TryRead(input, out consumed, out _, out var reply))
                return false;
            registers += reply.Kind == ModbusReplyKind.Registers ? 1 : 0;
            refusals += reply.Kind == ModbusReplyKind.Exception ? 1 : 0;
            strays += reply.Kind is ModbusReplyKind.OtherSlave or ModbusReplyKind.OtherLength ? 1 : 0;
            return true;
        });
        Say("Modbus, the registers asked for", registers, "2^-40 a byte", Bytes * Math.Pow(2, -40));
        Say("Modbus, a refusal", refusals, "2^-32 a byte", Bytes * Math.Pow(2, -32));
        // Any address of 247, two functions, an even number of bytes up to 250: these become no reading, they only raise an uncertainty.
        Say("Modbus, another slave's frame", strays, "247/256 x 2/256 x 125/256 x 2^-16 a byte", Bytes * (247 / 256.0) * (2 / 256.0) * (125 / 256.0) * Math.Pow(2, -16));
    }

    // The second form has printable characters only, a line's length apart: what a wrong bit rate makes of text.
    static void Text()
    {
        Say("text, all bytes", Lines(new Random(13), _ => { }), "12 characters of a pattern out of 256 each", double.NaN);
        Say("text, printable bytes in lines", Lines(new Random(14), Printable), "digits 10/95 and fixed characters 1/95 each", Odds());
    }

    static long Lines(Random random, Action<byte[]> shape)
    {
        if (!LinePattern.TryCreate(Pattern, FieldUnit.Kilogram, 1, LineChecksum.None, out var pattern, out var problem))
            throw new InvalidOperationException(problem);
        var decoder = new TextLineDecoder(pattern, LineEnd.ReturnOrFeed);
        Feed(random, (in ReadOnlySequence<byte> input, out SequencePosition consumed) => decoder.TryRead(input, out consumed, out _, out _), shape);
        return decoder.Counters.Lines;
    }

    static void Printable(byte[] chunk)
    {
        for (var index = 0; index < chunk.Length; index++)
            chunk[index] = index % LineLength == LineLength - 1 ? (byte)'\n' : (byte)(' ' + chunk[index] % 95);
    }

    // Eleven characters: digits before the point, the point, three digits, " kg"; with or without a sign. Blanks at the ends are cut off first and are left out here.
    static double Odds()
    {
        var (digit, other) = (10 / 95.0, 1 / 95.0);
        var line = Math.Pow(digit, 7) * Math.Pow(other, 4) + 2 * other * Math.Pow(digit, 6) * Math.Pow(other, 4);
        return Bytes / (double)LineLength * line;
    }

    delegate bool Reader(in ReadOnlySequence<byte> input, out SequencePosition consumed);

    static void Feed(Random random, Reader read, Action<byte[]>? shape = null)
    {
        var buffer = new byte[Chunk];
        for (long total = 0; total < Bytes; total += Chunk)
        {
            random.NextBytes(buffer);
            shape?.Invoke(buffer);
            // A rest at the end of a chunk is dropped: noise has no message to lose.
            var input = new ReadOnlySequence<byte>(buffer);
            while (read(input, out var consumed))
                input = input.Slice(consumed);
        }
    }

    static void Say(string what, long taken, string odds, double expected) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{Bytes} random bytes, {what}: {taken} taken for messages; odds: {odds}{(double.IsNaN(expected) ? "" : $", {expected:G3} expected")}"));
}
