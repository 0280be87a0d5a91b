using ScaleLink.Protocol.Readings;
using static System.Buffers.Binary.BinaryPrimitives;

namespace ScaleLink.Protocol.Modbus;

/// <summary>One number of a slave: where it lies, how it is written, what it stands for.</summary>
/// <param name="Function">Which table.</param>
/// <param name="Address">Its first register, from 0.</param>
/// <param name="Type">How it is written.</param>
/// <param name="Order">Where its high half lies.</param>
/// <param name="Rule">What it stands for.</param>
sealed record RegisterField(ModbusFunction Function, ushort Address, RegisterType Type, WordOrder Order, FieldRule Rule)
{
    /// <summary>Registers that it takes: 1 or 2.</summary>
    public int Registers => Type is RegisterType.U16 or RegisterType.S16 ? 1 : 2;

    /// <summary>The number in the wire's bytes, which begin with its first register.</summary>
    internal double Read(ReadOnlySpan<byte> bytes)
    {
        if (Type == RegisterType.U16)
            return ReadUInt16BigEndian(bytes);
        if (Type == RegisterType.S16)
            return ReadInt16BigEndian(bytes);
        var whole = Order == WordOrder.HighFirst
            ? ReadUInt32BigEndian(bytes)
            : (uint)(ReadUInt16BigEndian(bytes[2..]) << 16 | ReadUInt16BigEndian(bytes));
        return Type switch
        {
            // As doubles, each: the common type of the three would be the float, which cannot hold every count.
            RegisterType.U32 => (double)whole,
            RegisterType.S32 => (double)(int)whole,
            _ => (double)BitConverter.UInt32BitsToSingle(whole),
        };
    }
}
