using System.Globalization;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Recognition;

/// <summary>A slave that another master asks.</summary>
/// <param name="First">The first question that it has answered.</param>
/// <param name="Replies">How many it has answered.</param>
internal sealed record FoundTraffic(ModbusRequest First, int Replies) : Found
{
    public override string Protocol => "modbus-rtu";

    public override string Summary => string.Create(CultureInfo.InvariantCulture, $"slave {First.Slave} answers another master's questions, {Replies} of them");

    public override IReadOnlyList<string> Remarks =>
    [
        "Another master asks on this line: two masters talk over each other. Take the other one off before the daemon reads here.",
        "Which registers hold the load, and of what type, stands in the device's manual.",
    ];
}
