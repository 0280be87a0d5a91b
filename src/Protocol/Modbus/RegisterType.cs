namespace ScaleLink.Protocol.Modbus;

/// <summary>How a number lies in registers.</summary>
enum RegisterType
{
    /// <summary>One register, without sign.</summary>
    U16,
    /// <summary>One register, two's complement.</summary>
    S16,
    /// <summary>Two registers, without sign.</summary>
    U32,
    /// <summary>Two registers, two's complement.</summary>
    S32,
    /// <summary>Two registers, IEEE 754 binary32.</summary>
    F32,
}

/// <summary>Which of two registers holds the high half. Inside a register the high byte always comes first.</summary>
enum WordOrder
{
    /// <summary>The one with the lower address.</summary>
    HighFirst,
    /// <summary>The one with the higher address.</summary>
    LowFirst,
}
