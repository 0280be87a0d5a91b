using System.Buffers;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Bench.Decoding;

/// <summary>The long form of the Modbus damage tests: how often damage passes for the reply, counted against the odds of a 16-bit check.</summary>
static class ReplyDamageCampaign
{
    const int SingleDamages = 20_000_000;
    const int HeavyDamages = 20_000_000;
    const int RandomBytes = 300_000_000;

    public static void Run()
    {
        var wrong = Damage(SingleDamages, hits: _ => 1);
        Console.WriteLine($"Modbus, one damaged byte, {SingleDamages} times: {wrong} wrong replies (none can be)");
        wrong = Damage(HeavyDamages, hits: random => random.Next(2, 9));
        Console.WriteLine($"Modbus, 2 to 8 damaged bytes, {HeavyDamages} times: {wrong} wrong replies (at 2^-16 at most {HeavyDamages / 65536.0:F0})");
        Console.WriteLine($"Modbus, {RandomBytes} random bytes: {Noise()} replies (at 2^-40 a byte {RandomBytes / Math.Pow(2, 40):G2}; refusals at 2^-32 {RandomBytes / Math.Pow(2, 32):G2})");
    }

    static int Damage(int count, Func<Random, int> hits)
    {
        var random = new Random(4);
        var decoder = new ModbusReplyDecoder();
        var (sent, line) = (new byte[ModbusReplyWriter.MaxLength], new byte[ModbusReplyWriter.MaxLength]);
        Span<ushort> registers = stackalloc ushort[12];
        var wrong = 0;
        for (var index = 0; index < count; index++)
        {
            var question = new ModbusRequest((byte)random.Next(1, 248), ModbusFunction.ReadHoldingRegisters, 0, random.Next(1, registers.Length + 1));
            for (var register = 0; register < question.Count; register++)
                registers[register] = (ushort)random.Next(65536);
            var length = ModbusReplyWriter.WriteRegisters(question.Slave, question.Function, registers[..question.Count], sent);
            sent.AsSpan(0, length).CopyTo(line);
            for (var hit = hits(random); hit > 0; hit--)
                line[random.Next(length)] ^= (byte)random.Next(1, 256);

            decoder.Expect(question);
            var input = new ReadOnlySequence<byte>(line, 0, length);
            while (decoder.TryRead(input, out var consumed, out _, out var reply))
            {
                input = input.Slice(consumed);
                // Two hits on one byte can undo each other: that reply is right.
                var isRight = reply.Kind == ModbusReplyKind.Registers && reply.Data.SequenceEqual(sent.AsSpan(3, 2 * question.Count));
                if (!isRight && reply.Kind is (ModbusReplyKind.Registers or ModbusReplyKind.Exception))
                    wrong++;
            }
        }

        return wrong;
    }

    static long Noise()
    {
        const int Chunk = 1 << 20;
        var random = new Random(5);
        var decoder = new ModbusReplyDecoder();
        decoder.Expect(new ModbusRequest(5, ModbusFunction.ReadInputRegisters, 0, 12));
        var buffer = new byte[Chunk];
        long replies = 0;
        for (long total = 0; total < RandomBytes; total += Chunk)
        {
            random.NextBytes(buffer);
            // A rest at the end of a chunk is dropped: noise has no frame to lose.
            var input = new ReadOnlySequence<byte>(buffer);
            while (decoder.TryRead(input, out var consumed, out _, out var reply))
            {
                input = input.Slice(consumed);
                replies += reply.Slave == 5 ? 1 : 0;
            }
        }

        return replies;
    }
}
