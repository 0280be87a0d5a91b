using Shared;
using CsCheck;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Protocol.Tests.Modbus;

public class RequestTests
{
    internal static readonly Gen<ModbusRequest> Any = Gen.Select(
        Gen.Byte[1, 247], Gen.Bool.Select(isInput => isInput ? ModbusFunction.ReadInputRegisters : ModbusFunction.ReadHoldingRegisters), Gen.UShort[0, 65411], Gen.Int[1, 125],
        (slave, function, address, count) => new ModbusRequest(slave, function, address, count));

    [Fact]
    public void A_request_comes_back() => Seeded.Check(Any, 2000, request =>
    {
        Assert.True(ModbusRequest.TryParse(Line.Request(request), out var read));
        Assert.Equal(request, read);
    });

    [Theory]
    [InlineData(0, 3, 0, 1)]
    [InlineData(248, 3, 0, 1)]
    [InlineData(1, 1, 0, 1)]
    [InlineData(1, 6, 0, 1)]
    [InlineData(1, 3, 0, 0)]
    [InlineData(1, 3, 0, 126)]
    [InlineData(1, 3, 65535, 2)]
    public void What_the_wire_cannot_carry_is_refused_and_nobody_is_broadcast_to(byte slave, byte function, int address, int count) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ModbusRequest(slave, (ModbusFunction)function, (ushort)address, count));

    [Fact]
    public void A_damaged_request_is_none() => Seeded.Check(Gen.Select(Any, Gen.Int[0, 7], Gen.Byte[1, 255]), 3000, damage =>
    {
        var frame = Line.Request(damage.Item1);
        frame[damage.Item2] ^= damage.Item3;
        Assert.False(ModbusRequest.TryParse(frame, out _));
    });

    [Fact]
    public void A_destination_that_is_too_short_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Line.Question.Write(new byte[7]));
        Assert.Throws<ArgumentException>(() => ModbusReplyWriter.WriteRegisters(1, ModbusFunction.ReadInputRegisters, [1, 2], new byte[8]));
        Assert.Throws<ArgumentException>(() => ModbusReplyWriter.WriteRegisters(1, ModbusFunction.ReadInputRegisters, [], new byte[80]));
        Assert.Throws<ArgumentException>(() => ModbusReplyWriter.WriteException(1, ModbusFunction.ReadInputRegisters, ModbusException.IllegalFunction, new byte[4]));
    }
}
