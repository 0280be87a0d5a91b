using Shared;
using CsCheck;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Protocol.Tests.Modbus;

public class ReplyDecoderTests
{
    const ModbusFunction Holding = ModbusFunction.ReadHoldingRegisters;
    static readonly byte[] Reply = Line.Registers(17, Holding, 1, 2, 3);
    static readonly Heard Right = new(ModbusReplyKind.Registers, 17, "000100020003", 0);

    static readonly Gen<byte[]> Noise = Gen.OneOf(Gen.Byte.Array[0, 40], Gen.Const((byte)0).Array[0, 3], Gen.Const((byte)17).Array[0, 9]);

    [Fact]
    public void An_echo_before_the_reply_is_passed_over_once()
    {
        var decoder = Line.Waiting();
        Assert.Equal([Right], Line.Decode(decoder, (byte[])[.. Line.Request(Line.Question), .. Reply], 1));
        Assert.Equal(new ModbusCounters(8 + Reply.Length, 1, 1, 0, 0), decoder.Counters);
    }

    [Fact]
    public void A_refusal_says_why()
    {
        Assert.Equal(
            [new Heard(ModbusReplyKind.Exception, 17, "", ModbusException.IllegalDataAddress)],
            Line.Decode(Line.Waiting(), Line.Refusal(17, Holding, ModbusException.IllegalDataAddress), 2));
        Assert.All(Enumerable.Range(1, 255), code => Assert.NotEmpty(ModbusExceptionMeaning.Of((ModbusException)code) + ModbusExceptionMeaning.Remedy((ModbusException)code)));
    }

    [Fact]
    public void Strangers_and_other_lengths_are_named_and_do_not_hide_the_reply()
    {
        byte[] stream = [.. Line.Registers(9, ModbusFunction.ReadInputRegisters, 7), .. Line.Registers(17, Holding, 5), .. Reply, .. Reply];
        Assert.Equal(
            [
                new Heard(ModbusReplyKind.OtherSlave, 9, "0007", 0),
                new Heard(ModbusReplyKind.OtherLength, 17, "0005", 0),
                Right,
                Right,
            ],
            Line.Decode(Line.Waiting(), stream));
    }

    [Fact]
    public void Before_any_question_everything_is_noise()
    {
        var decoder = new ModbusReplyDecoder();
        Assert.Empty(Line.Decode(decoder, Reply));
        Assert.Equal(new ModbusCounters(Reply.Length, 0, 0, 1, Reply.Length), decoder.Counters);
    }

    [Fact]
    public void A_byte_or_two_of_switching_noise_is_no_bad_frame()
    {
        var decoder = Line.Waiting();
        Assert.Equal([Right], Line.Decode(decoder, (byte[])[0, 0xFF, .. Reply]));
        Assert.Equal(new ModbusCounters(Reply.Length + 2, 1, 0, 0, 2), decoder.Counters);
    }

    [Fact]
    public void Noise_never_hides_the_reply_behind_it_however_the_bytes_are_cut() =>
        Seeded.Check(Gen.Select(Noise, Gen.Int[1, 30].Array[1, 5]), 3000, cut =>
        {
            var (noise, reads) = cut;
            var decoder = Line.Waiting();
            Assert.Equal(Right, Line.Decode(decoder, (byte[])[.. noise, .. Reply], reads)[^1]);
            var whole = Line.Waiting();
            Line.Decode(whole, (byte[])[.. noise, .. Reply]);
            Assert.Equal(whole.Counters, decoder.Counters);
        });

    // Every position, every other value: a CRC of 16 bits sees every burst of at most 16.
    [Fact]
    public void One_damaged_byte_never_makes_a_reply() =>
        Seeded.Check(Gen.Select(RequestTests.Any, Gen.UShort.Array[125]), 6, sample =>
        {
            var (any, values) = sample;
            var question = new ModbusRequest(any.Slave, any.Function, any.Address, Math.Min(any.Count, 20));
            var reply = Line.Registers(question.Slave, question.Function, values[..question.Count]);
            for (var position = 0; position < reply.Length; position++)
                for (var change = 1; change < 256; change++)
                {
                    reply[position] ^= (byte)change;
                    Assert.Empty(Line.Decode(Line.Waiting(question), reply));
                    reply[position] ^= (byte)change;
                }
        });

    [Fact]
    public void The_next_question_finds_its_reply_behind_a_truncated_one()
    {
        for (var length = 0; length < Reply.Length; length++)
        {
            var decoder = Line.Waiting();
            Assert.Empty(Line.Decode(decoder, Reply.AsMemory(0, length)));
            decoder.Discard(length);
            decoder.Expect(Line.Question);
            Assert.Equal([Right], Line.Decode(decoder, Reply));
        }
    }
}
