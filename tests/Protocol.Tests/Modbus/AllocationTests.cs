using System.Buffers;
using ScaleLink.Protocol.Modbus;
using ScaleLink.Protocol.Readings;

namespace ScaleLink.Protocol.Tests.Modbus;

public class AllocationTests
{
    [Fact]
    public void Reading_replies_allocates_nothing()
    {
        var question = new ModbusRequest(3, ModbusFunction.ReadHoldingRegisters, 10, 2);
        var map = new RegisterMap([new RegisterField(question.Function, question.Address, RegisterType.S32, WordOrder.HighFirst,
            new FieldRule { Meaning = FieldMeaning.Load, Unit = FieldUnit.Count })]);
        var decoder = new ModbusReplyDecoder();
        var image = new RegisterImage(map);
        var reply = Line.Registers(3, question.Function, 0, 7);
        var input = PadFrames.Segment.Chain([reply.AsMemory(0, 4), reply.AsMemory(4)]);
        Sum(decoder, image, question, input);

        var before = GC.GetAllocatedBytesForCurrentThread();
        var sum = Sum(decoder, image, question, input);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.Equal(70_000, sum);
    }

    static long Sum(ModbusReplyDecoder decoder, RegisterImage image, in ModbusRequest question, ReadOnlySequence<byte> input)
    {
        long sum = 0;
        for (var round = 0; round < 10_000; round++)
        {
            decoder.Expect(question);
            if (!decoder.TryRead(input, out _, out _, out var reply))
                continue;
            image.Store(0, reply.Data);
            sum += image.Read().Sum;
        }

        return sum;
    }
}
