using System.Globalization;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Recognition;

/// <summary>One table of a slave, as far as it lets itself be read.</summary>
/// <param name="Table">Holding or input.</param>
/// <param name="At">The first register, counted from 0 as on the wire.</param>
/// <param name="Readings">What the registers held, reading by reading; none when the slave refused.</param>
/// <param name="Refusal">How it refused.</param>
internal sealed record FoundRegisters(ModbusFunction Table, ushort At, IReadOnlyList<ushort[]> Readings, ModbusException? Refusal)
{
    /// <summary>How many registers one question gets.</summary>
    public int Count => Readings.Count == 0 ? 0 : Readings[0].Length;

    /// <summary>As in the bay file.</summary>
    public string TableName => Table == ModbusFunction.ReadInputRegisters ? "input" : "holding";

    /// <summary>For people.</summary>
    public string Describe() => Count == 0
        ? $"{TableName} registers {(Refusal is { } refusal ? $"refused with exception {((byte)refusal).ToString(CultureInfo.InvariantCulture)}" : "not answered")}"
        : string.Create(CultureInfo.InvariantCulture, $"{TableName} registers {At} to {At + Count - 1}: {string.Join(' ', Readings[^1])}");

    /// <summary>Whether both hold the same, as devices with one set of registers do.</summary>
    public bool IsAs(FoundRegisters other) => Count > 0 && At == other.At && Count == other.Count && Numbers.SequenceEqual(other.Numbers);

    /// <summary>What in them looks like a number of its own.</summary>
    public IReadOnlyList<RegisterNumber> Numbers => RegisterNumbers.Of(At, Readings);
}

/// <summary>Registers that look like one number.</summary>
/// <param name="At">Its first register.</param>
/// <param name="Type">As in the bay file: s16, s32, f32.</param>
/// <param name="IsLowFirst">The first of two registers holds the low half.</param>
internal sealed record RegisterNumber(ushort At, string Type, bool IsLowFirst);
