namespace ScaleLink.Protocol.Framing;

/// <summary>
/// Two 16-bit cyclic redundancy checks, table driven. Names and parameters follow the catalogue of parametrised CRC
/// algorithms (reveng.sourceforge.io).
/// </summary>
static class Crc16
{
    internal const ushort Start = 0xFFFF;

    static readonly ushort[] Ibm3740Table = MostSignificantFirst(0x1021);
    static readonly ushort[] ModbusTable = LeastSignificantFirst(0xA001);

    /// <summary>
    /// CRC-16/IBM-3740: polynomial 0x1021, start 0xFFFF, most significant bit first, nothing added at the end.
    /// The check value of ASCII "123456789" is 0x29B1.
    /// </summary>
    public static ushort Ibm3740(ReadOnlySpan<byte> data) => ContinueIbm3740(Start, data);

    /// <summary>The same, from where an earlier part of the data left it.</summary>
    internal static ushort ContinueIbm3740(ushort crc, ReadOnlySpan<byte> data)
    {
        foreach (var value in data)
            crc = (ushort)((crc << 8) ^ Ibm3740Table[(crc >> 8) ^ value]);
        return crc;
    }

    /// <summary>
    /// CRC-16/MODBUS: polynomial 0x8005 reflected, start 0xFFFF, least significant bit first, nothing added at the end.
    /// The check value of ASCII "123456789" is 0x4B37. Modbus RTU sends the low byte first.
    /// </summary>
    public static ushort Modbus(ReadOnlySpan<byte> data)
    {
        var crc = Start;
        foreach (var value in data)
            crc = (ushort)((crc >> 8) ^ ModbusTable[(crc ^ value) & 0xFF]);
        return crc;
    }

    static ushort[] MostSignificantFirst(int polynomial)
    {
        var table = new ushort[256];
        for (var index = 0; index < table.Length; index++)
        {
            var remainder = index << 8;
            for (var bit = 0; bit < 8; bit++)
                remainder = (remainder & 0x8000) != 0 ? (remainder << 1) ^ polynomial : remainder << 1;
            table[index] = (ushort)remainder;
        }
        return table;
    }

    static ushort[] LeastSignificantFirst(int reflectedPolynomial)
    {
        var table = new ushort[256];
        for (var index = 0; index < table.Length; index++)
        {
            var remainder = index;
            for (var bit = 0; bit < 8; bit++)
                remainder = (remainder & 1) != 0 ? (remainder >> 1) ^ reflectedPolynomial : remainder >> 1;
            table[index] = (ushort)remainder;
        }
        return table;
    }
}
