using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Protocol.Tests.Modbus;

public class FuzzTests
{
    const ModbusFunction Input = ModbusFunction.ReadInputRegisters;

    // To pass, noise needs slave, function, number of bytes and check of the question: 2^-40 a byte, so none in 2 million. A refusal
    // needs 2^-32. Frames of strangers are named, not believed.
    [Fact]
    public void Random_bytes_are_never_a_reply()
    {
        var decoder = Line.Waiting(new ModbusRequest(5, Input, 0, 4));
        var bytes = new byte[2_000_000];
        new Random(20262).NextBytes(bytes);
        Assert.DoesNotContain(Line.Decode(decoder, bytes, 1, 64, 511, 4096), heard => heard.Slave == 5);
        Assert.Equal(bytes.Length, decoder.Counters.Bytes, 20.0);
    }

    // Replies torn, joined, repeated and hit: 2^-16 of them could pass; of these 40 000 less than one is expected, and this seed has none.
    [Fact]
    public void Heavily_damaged_replies_are_refused_or_right()
    {
        var random = new Random(20263);
        var decoder = new ModbusReplyDecoder();
        var right = 0;
        for (var round = 0; round < 40_000; round++)
        {
            var reply = Line.Registers(5, Input, (ushort)round, (ushort)random.Next(65536), (ushort)random.Next(4), 0xFFFF);
            var question = new ModbusRequest(5, Input, (ushort)random.Next(1000), 4);
            decoder.Expect(question);
            var heard = Line.Decode(decoder, (byte[])[.. random.Next(2) == 0 ? Line.Request(question) : [], .. Damage(reply, random)]);
            Assert.All(heard.Where(h => h.Slave == 5 && h.Kind == ModbusReplyKind.Registers), h => Assert.Equal(Convert.ToHexString(reply.AsSpan(3, 8)), h.Data));
            right += heard.Count(h => h.Slave == 5);
        }

        Assert.InRange(right, 8_000, 20_000);
        Assert.True(decoder.Counters.BadFrames > 10_000);
    }

    static byte[] Damage(byte[] frame, Random random)
    {
        var at = random.Next(frame.Length);
        switch (random.Next(5))
        {
            case 0:
                return frame[..at];
            case 1:
                return [.. frame[..at], .. frame[random.Next(frame.Length)..]];
            case 2:
                return [.. Enumerable.Range(0, random.Next(1, 9)).Select(_ => (byte)random.Next(256)), .. frame];
            case 3:
                return frame;
            default:
                var damaged = (byte[])frame.Clone();
                for (var hits = random.Next(2, 6); hits > 0; hits--)
                    damaged[random.Next(frame.Length)] ^= (byte)random.Next(1, 256);
                return damaged;
        }
    }
}
