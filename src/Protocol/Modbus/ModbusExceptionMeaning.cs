namespace ScaleLink.Protocol.Modbus;

/// <summary>An exception reply in words: what it means, and what a person does next.</summary>
static class ModbusExceptionMeaning
{
    /// <summary>What the code means.</summary>
    public static string Of(ModbusException code) => code switch
    {
        ModbusException.IllegalFunction => "it cannot read that kind of register",
        ModbusException.IllegalDataAddress => "it has no such register",
        ModbusException.IllegalDataValue => "it does not give that many registers at once",
        ModbusException.ServerDeviceFailure => "it failed while reading",
        ModbusException.Acknowledge => "it has accepted the request and needs a long time",
        ModbusException.ServerDeviceBusy => "it is busy",
        ModbusException.MemoryParityError => "its memory failed a check",
        ModbusException.GatewayPathUnavailable => "the gateway has no way to it",
        ModbusException.GatewayTargetFailedToRespond => "it does not answer its gateway",
        _ => "a code of its maker's own",
    };

    /// <summary>What to do next.</summary>
    public static string Remedy(ModbusException code) => code switch
    {
        ModbusException.IllegalFunction => "Try the other table, holding or input, in the bay file.",
        ModbusException.IllegalDataAddress or ModbusException.IllegalDataValue =>
            "Compare the registers in the bay file with the device's manual; many manuals count from 1, the wire counts from 0.",
        ModbusException.Acknowledge or ModbusException.ServerDeviceBusy => "Lower poll_hz in the bay file.",
        ModbusException.GatewayPathUnavailable or ModbusException.GatewayTargetFailedToRespond => "Check the gateway's wiring and settings.",
        _ => "Restart the device; its manual explains the code.",
    };
}
