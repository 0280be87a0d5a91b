using static System.Buffers.Binary.BinaryPrimitives;

namespace ScaleLink.Protocol.Modbus;

/// <summary>A slave's frames, for simulators and tests. Each method gives the length written.</summary>
static class ModbusReplyWriter
{
    /// <summary>The longest reply to a read.</summary>
    public const int MaxLength = 5 + 2 * ModbusRequest.MostRegisters;

    /// <summary>Writes the registers asked for.</summary>
    /// <exception cref="ArgumentException">Not 1 to 125 registers, or the destination is too short.</exception>
    public static int WriteRegisters(byte slave, ModbusFunction function, ReadOnlySpan<ushort> registers, Span<byte> destination)
    {
        var length = 5 + 2 * registers.Length;
        if (registers.Length is < 1 or > ModbusRequest.MostRegisters || destination.Length < length)
            throw new ArgumentException($"A reply has 1 to {ModbusRequest.MostRegisters} registers and fits in {nameof(MaxLength)} bytes.", nameof(registers));
        (destination[0], destination[1], destination[2]) = (slave, (byte)function, (byte)(2 * registers.Length));
        for (var index = 0; index < registers.Length; index++)
            WriteUInt16BigEndian(destination[(3 + 2 * index)..], registers[index]);
        RtuCheck.Write(destination[..length]);
        return length;
    }

    /// <summary>Writes a refusal.</summary>
    /// <exception cref="ArgumentException">The destination is shorter than 5 bytes.</exception>
    public static int WriteException(byte slave, ModbusFunction function, ModbusException code, Span<byte> destination)
    {
        if (destination.Length < ModbusReplyDecoder.ExceptionLength)
            throw new ArgumentException("The destination is too short; 5 bytes are enough.", nameof(destination));
        (destination[0], destination[1], destination[2]) = (slave, (byte)((byte)function | ModbusReplyDecoder.ExceptionBit), (byte)code);
        RtuCheck.Write(destination[..ModbusReplyDecoder.ExceptionLength]);
        return ModbusReplyDecoder.ExceptionLength;
    }
}
