namespace ScaleLink.Protocol.Modbus;

/// <summary>Why a slave refuses. Source: MODBUS Application Protocol V1.1b3, 7; numbers and names from memory.</summary>
enum ModbusException : byte
{
    /// <summary>It does not know the function.</summary>
    IllegalFunction = 1,
    /// <summary>It has no such register.</summary>
    IllegalDataAddress = 2,
    /// <summary>It does not like the number of registers.</summary>
    IllegalDataValue = 3,
    /// <summary>It broke while trying.</summary>
    ServerDeviceFailure = 4,
    /// <summary>It has begun and will take long.</summary>
    Acknowledge = 5,
    /// <summary>It is busy with something long.</summary>
    ServerDeviceBusy = 6,
    /// <summary>Its memory failed a check.</summary>
    MemoryParityError = 8,
    /// <summary>A gateway has no way to the slave.</summary>
    GatewayPathUnavailable = 10,
    /// <summary>The slave behind a gateway did not answer.</summary>
    GatewayTargetFailedToRespond = 11,
}
