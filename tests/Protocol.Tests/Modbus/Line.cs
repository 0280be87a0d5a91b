using System.Buffers;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Protocol.Tests.Modbus;

/// <summary>A frame taken out of the decoder, to keep and compare.</summary>
sealed record Heard(ModbusReplyKind Kind, byte Slave, string Data, ModbusException Exception);

/// <summary>Feeds a decoder in reads of any size; what a read leaves stays as a segment of its own before the next.</summary>
static class Line
{
    public static readonly ModbusRequest Question = new(17, ModbusFunction.ReadHoldingRegisters, 0x6B, 3);

    public static List<Heard> Decode(ModbusReplyDecoder decoder, ReadOnlyMemory<byte> bytes, params IReadOnlyList<int> reads)
    {
        var heard = new List<Heard>();
        var kept = new List<ReadOnlyMemory<byte>>();
        for (var index = 0; !bytes.IsEmpty; index++)
        {
            var size = reads.Count == 0 ? bytes.Length : Math.Min(bytes.Length, reads[index % reads.Count]);
            kept.Add(bytes[..size]);
            bytes = bytes[size..];
            var input = PadFrames.Segment.Chain(kept);
            var rest = input.Slice(Drain(decoder, input, heard));
            kept.Clear();
            foreach (var piece in rest)
                kept.Add(piece);
        }

        return heard;
    }

    static SequencePosition Drain(ModbusReplyDecoder decoder, ReadOnlySequence<byte> input, List<Heard> heard)
    {
        while (true)
        {
            if (!decoder.TryRead(input, out var consumed, out var examined, out var reply))
            {
                Assert.Equal(input.End, examined);
                return consumed;
            }

            heard.Add(new Heard(reply.Kind, reply.Slave, Convert.ToHexString(reply.Data), reply.Exception));
            input = input.Slice(consumed);
        }
    }

    /// <summary>A decoder that waits for the reply to the question.</summary>
    public static ModbusReplyDecoder Waiting(ModbusRequest? question = null)
    {
        var decoder = new ModbusReplyDecoder();
        decoder.Expect(question ?? Question);
        return decoder;
    }

    public static byte[] Request(in ModbusRequest request)
    {
        var frame = new byte[ModbusRequest.Length];
        request.Write(frame);
        return frame;
    }

    public static byte[] Registers(byte slave, ModbusFunction function, params ushort[] registers)
    {
        var frame = new byte[ModbusReplyWriter.MaxLength];
        return frame[..ModbusReplyWriter.WriteRegisters(slave, function, registers, frame)];
    }

    public static byte[] Refusal(byte slave, ModbusFunction function, ModbusException code)
    {
        var frame = new byte[5];
        ModbusReplyWriter.WriteException(slave, function, code, frame);
        return frame;
    }
}
