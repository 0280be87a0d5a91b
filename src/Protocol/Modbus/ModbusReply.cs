namespace ScaleLink.Protocol.Modbus;

/// <summary>What a frame on the line is to the one who asked.</summary>
enum ModbusReplyKind
{
    /// <summary>The registers asked for.</summary>
    Registers,
    /// <summary>A refusal of the slave asked.</summary>
    Exception,
    /// <summary>From the slave asked, but another number of registers.</summary>
    OtherLength,
    /// <summary>From another slave: late, or misaddressed.</summary>
    OtherSlave,
}

/// <summary>A frame whose check is good. Valid until the decoder is asked for the next one.</summary>
/// <param name="kind">What it is to the one who asked.</param>
/// <param name="slave">Who sent it.</param>
/// <param name="data">Registers, each two bytes, high byte first; empty in a refusal.</param>
/// <param name="exception">Why it was refused; 0 otherwise.</param>
readonly ref struct ModbusReply(ModbusReplyKind kind, byte slave, ReadOnlySpan<byte> data, ModbusException exception)
{
    /// <summary>What it is to the one who asked.</summary>
    public ModbusReplyKind Kind { get; } = kind;

    /// <summary>Who sent it.</summary>
    public byte Slave { get; } = slave;

    /// <summary>Registers, each two bytes, high byte first; empty in a refusal.</summary>
    public ReadOnlySpan<byte> Data { get; } = data;

    /// <summary>Why it was refused; 0 otherwise.</summary>
    public ModbusException Exception { get; } = exception;
}
