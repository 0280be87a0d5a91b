using System.Globalization;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Recognition;

/// <summary>Another master's Modbus traffic.</summary>
/// <param name="Questions">Whole questions heard.</param>
/// <param name="Replies">Replies to them.</param>
/// <param name="Asked">The first question that each slave has answered, by address.</param>
internal sealed record FoundTraffic(int Questions, int Replies, IReadOnlyList<ModbusRequest> Asked) : Found
{
    public override string Protocol => "modbus-rtu";

    public override string Summary => $"{Questions} Modbus questions and {Replies} replies; slaves {string.Join(", ", Asked.Select(a => a.Slave.ToString(CultureInfo.InvariantCulture)))}";

    public override IReadOnlyList<string> Remarks =>
    [
        "Another master asks on this line: two masters talk over each other. Take the other one off before the daemon reads here.",
        "Which registers hold the load, and of what type, stands in the device's manual.",
    ];
}
