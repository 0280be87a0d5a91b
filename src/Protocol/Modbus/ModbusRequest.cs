using static System.Buffers.Binary.BinaryPrimitives;

namespace ScaleLink.Protocol.Modbus;

/// <summary>
/// A question to one slave. Never a broadcast: a read of address 0 would be answered by nobody, or by everybody at once.
/// Source: MODBUS over Serial Line V1.02 and MODBUS Application Protocol V1.1b3.
/// </summary>
readonly record struct ModbusRequest
{
    /// <summary>Bytes of the frame.</summary>
    public const int Length = 8;
    /// <summary>Lowest address of a slave.</summary>
    public const int LowestSlave = 1;
    /// <summary>Highest address of a slave.</summary>
    public const int HighestSlave = 247;
    /// <summary>Most registers that one reply can carry.</summary>
    public const int MostRegisters = 125;

    /// <summary>Asks slave 1 to 247 for 1 to 125 registers from an address, counted from 0 as on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Something lies outside of these.</exception>
    public ModbusRequest(byte slave, ModbusFunction function, ushort address, int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(slave, LowestSlave);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(slave, HighestSlave);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, MostRegisters);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(address + count, 0x10000, nameof(count));
        if (!IsRead(function))
            throw new ArgumentOutOfRangeException(nameof(function), function, "Only functions 3 and 4 read registers.");
        (Slave, Function, Address, Count) = (slave, function, address, count);
    }

    /// <summary>Who is asked.</summary>
    public byte Slave { get; }

    /// <summary>Which table.</summary>
    public ModbusFunction Function { get; }

    /// <summary>The first register, from 0.</summary>
    public ushort Address { get; }

    /// <summary>How many registers.</summary>
    public int Count { get; }

    /// <summary>Bytes of the reply: slave, function, number of bytes, registers, check.</summary>
    public int ReplyLength => 5 + 2 * Count;

    /// <summary>Writes the frame; gives its length.</summary>
    /// <exception cref="ArgumentException">The destination is shorter than <see cref="Length"/>.</exception>
    public int Write(Span<byte> destination)
    {
        if (destination.Length < Length)
            throw new ArgumentException($"The destination is too short; {nameof(Length)} is enough.", nameof(destination));
        destination[0] = Slave;
        destination[1] = (byte)Function;
        WriteUInt16BigEndian(destination[2..], Address);
        WriteUInt16BigEndian(destination[4..], (ushort)Count);
        RtuCheck.Write(destination[..Length]);
        return Length;
    }

    /// <summary>Reads a whole frame, as a slave does. False when it is none, or none that reads registers.</summary>
    public static bool TryParse(ReadOnlySpan<byte> frame, out ModbusRequest request)
    {
        request = default;
        if (frame.Length != Length || !RtuCheck.IsGood(frame))
            return false;
        var (address, count) = (ReadUInt16BigEndian(frame[2..]), ReadUInt16BigEndian(frame[4..]));
        if (frame[0] is < LowestSlave or > HighestSlave || !IsRead((ModbusFunction)frame[1])
            || count is < 1 or > MostRegisters || address + count > 0x10000)
            return false;
        request = new ModbusRequest(frame[0], (ModbusFunction)frame[1], address, count);
        return true;
    }

    internal static bool IsRead(ModbusFunction function) =>
        function is ModbusFunction.ReadHoldingRegisters or ModbusFunction.ReadInputRegisters;
}
