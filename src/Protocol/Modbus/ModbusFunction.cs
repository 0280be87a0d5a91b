namespace ScaleLink.Protocol.Modbus;

/// <summary>The two ways of reading that this master uses. Source: MODBUS Application Protocol V1.1b3, 6.3 and 6.4.</summary>
enum ModbusFunction : byte
{
    /// <summary>Holding registers.</summary>
    ReadHoldingRegisters = 3,
    /// <summary>Input registers.</summary>
    ReadInputRegisters = 4,
}
